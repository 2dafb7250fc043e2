/* check.c: asks everything of a panel, in the order in which answers need one another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Upwards through the stack each placement settles on what lies there, and its joint finds places
 * for dabs; downwards the joints take their loads; then mass, hanging, which needs the mass, and
 * concealment, which needs the hook.
 */
#include "check/check.h"

#include "check/questions.h"
#include "check/said.h"
#include "check/settle-stack.h"

static PpCheck *
check_alloc (const PpPanel *panel,
             const PpCheck *previous)
{
  PpCheck *self = g_atomic_rc_box_new0 (PpCheck);

  self->panel = pp_panel_ref (panel);
  self->scene = pp_scene_new (panel, previous != NULL ? previous->scene : NULL);
  self->n = self->scene->n_bodies;
  self->rests = g_new0 (PpRest *, self->n);
  self->joints = g_new0 (PpJoint *, self->n);
  return self;
}

static void
look_for_wire (PpCheck       *self,
               const PpCheck *previous)
{
  const PpSettled now = { self->scene, self->rests };

  if (previous == NULL)
    self->conceal = pp_conceal_new (&now, self->hang, NULL, NULL);
  else
    {
      const PpSettled before = { previous->scene, previous->rests };

      self->conceal = pp_conceal_new (&now, self->hang, previous->conceal, &before);
    }
}

static void
hang_and_hide (PpCheck       *self,
               const PpCheck *previous)
{
  self->extent = pp_extent_of (self->scene, self->depth);
  pp_joints_take_loads (self->joints, self->rests, self->scene);
  self->mass = pp_mass_of (self->scene, self->rests, self->joints);
  if (self->panel->wire != NULL)
    {
      self->hang = g_new0 (PpHang, 1);
      pp_hang_init (self->hang, self->scene, &self->mass);
    }
  if (self->panel->wire != NULL || self->panel->holes->len > 0)
    look_for_wire (self, previous);
  self->composition = previous != NULL
                          ? pp_composition_new (self->scene, previous->composition, previous->scene)
                          : pp_composition_new (self->scene, NULL, NULL);
}

/* Whether words that go by the whole panel may be others. */
static gboolean
speaks_alike (const PpCheck *self,
              const PpCheck *previous)
{
  return previous != NULL && self->panel->units == previous->panel->units
         && self->panel->quiet == previous->panel->quiet;
}

/* Of which placements all that is said of them alone goes by the same as before. A rest that was
 * taken over has all that it rests on where it was. (transfer full) */
static gboolean *
find_unchanged (const PpCheck *self,
                const PpCheck *previous)
{
  gboolean *unchanged = g_new0 (gboolean, self->n + 1);

  for (guint i = 0; i < MIN (self->n, previous->n); i++)
    unchanged[i] = self->scene->bodies[i] == previous->scene->bodies[i]
                   && self->rests[i] == previous->rests[i]
                   && self->joints[i] == previous->joints[i]
                   && pp_piece_names_agree (self->names, previous->names, i);
  return unchanged;
}

static void (* const questions[]) (PpFindings *findings, const PpCheck *check) = {
#define PP_QUESTION(name, ...) pp_ask_##name,
#include "check/questions.list"
#undef PP_QUESTION
};

static void
say_findings (PpCheck       *self,
              const PpCheck *previous)
{
  g_autofree gboolean *unchanged = NULL;
  PpFindings findings;

  self->names = pp_piece_names_new (self->scene, previous != NULL ? previous->names : NULL);
  self->said = pp_said_new (self->n, self->panel->tray->len);
  pp_findings_init (&findings, self->panel);
  findings.names = self->names;
  findings.said = self->said;
  if (speaks_alike (self, previous))
    {
      unchanged = find_unchanged (self, previous);
      findings.before = previous->said;
      findings.unchanged = unchanged;
      findings.same_pieces = self->panel->tray == previous->panel->tray
                             && pp_piece_names_have_same_pieces (self->names, previous->names);
    }
  for (guint i = 0; i < G_N_ELEMENTS (questions); i++)
    questions[i] (&findings, self);
  pp_findings_sort (&findings);
  self->findings = g_ptr_array_ref (findings.list);
  pp_findings_clear (&findings);
}

PpCheck *
pp_check_new (const PpPanel  *panel,
              const PpCheck  *previous,
              GCancellable   *cancellable,
              PpProgressFunc  progress,
              gpointer        data,
              GError        **error)
{
  g_autoptr (PpCheck) self = NULL;

  g_return_val_if_fail (panel != NULL, NULL);
  self = check_alloc (panel, previous);
  if (previous != NULL && !pp_panel_has_same_ground (previous->panel, panel))
    previous = NULL;
  if (!pp_settle_stack (self, previous, cancellable, progress, data, error))
    return NULL;
  hang_and_hide (self, previous);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  say_findings (self, previous);
  if (progress != NULL)
    progress (1, data);
  return g_steal_pointer (&self);
}

PpCheck *
pp_check_ref (const PpCheck *self)
{
  return g_atomic_rc_box_acquire ((PpCheck *) self);
}

static void
check_clear (gpointer data)
{
  PpCheck *self = data;

  for (guint i = 0; i < self->n; i++)
    {
      pp_rest_unref (self->rests[i]);
      pp_joint_unref (self->joints[i]);
    }
  g_free (self->rests);
  g_free (self->joints);
  g_free (self->hang);
  g_clear_pointer (&self->conceal, pp_conceal_free);
  g_clear_pointer (&self->composition, pp_composition_free);
  g_clear_pointer (&self->names, pp_piece_names_free);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_clear_pointer (&self->said, pp_said_free);
  pp_scene_unref (self->scene);
  pp_panel_unref (self->panel);
}

void
pp_check_unref (const PpCheck *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full ((PpCheck *) self, check_clear);
}

guint
pp_check_count (const PpCheck *self,
                PpLevel        level)
{
  guint n = 0;

  for (guint i = 0; i < self->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (self->findings, i);

      n += finding->level == level && !finding->quiet;
    }
  return n;
}

char *
pp_owner_dup_id (const PpPanel *panel,
                 PpOwner        owner)
{
  guint index = pp_owner_index (owner);

  switch (pp_owner_kind (owner))
    {
    case PP_OWNER_BACKGROUND:
      return g_strdup ("background");
    case PP_OWNER_FUSED:
      return g_strdup (pp_panel_fused (panel, index)->id);
    case PP_OWNER_KNOT:
      return g_strconcat ("knot:", index == 0 ? panel->wire->from : panel->wire->to, NULL);
    case PP_OWNER_PLACEMENT:
      return g_strdup (pp_panel_placement (panel, index)->id);
    case PP_OWNER_NOTHING:
      break;
    }
  g_return_val_if_reached (NULL);
}
