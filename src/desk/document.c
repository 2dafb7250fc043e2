/* document.c: the panel in hand.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said of the panel comes from three values that arrive one after another: the check, the
 * plan of that check, and what the art was judged to be; the findings shown are all of theirs.
 */
#include "config.h"

#include "desk/document-private.h"
#include "desk/nagging.h"
#include "panel/i18n.h"
#include "sheet/left-out.h"

#include <string.h>

G_DEFINE_FINAL_TYPE (PpDocument, pp_document, G_TYPE_OBJECT)

guint pp_document_signals[PP_DOCUMENT_N_SIGNALS];

enum
{
  PROP_SAVED = 1,
  PROP_FILE,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
sort_out (PpDocument *self,
          GPtrArray  *findings)
{
  for (guint i = 0; findings != NULL && i < findings->len; i++)
    {
      PpFinding *finding = g_ptr_array_index (findings, i);

      if (finding->quiet)
        g_ptr_array_add (self->known, finding);
      else if (!pp_finding_waits (finding, pp_document_get_panel (self)))
        g_ptr_array_add (self->findings, finding);
    }
}

static void
gather_findings (PpDocument *self)
{
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  if (self->check != NULL)
    sort_out (self, self->check->findings);
  if (self->plan != NULL)
    sort_out (self, self->plan->findings);
  sort_out (self, self->left_out);
  g_ptr_array_sort (self->findings, pp_finding_compare);
  g_ptr_array_sort (self->known, pp_finding_compare);
}

static void
checked_cb (PpChecker     *checker,
            const PpCheck *check,
            PpDocument    *self)
{
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_hash_table_remove_all (self->rests);
  g_clear_pointer (&self->check, pp_check_unref);
  self->check = pp_check_ref (check);
  for (guint i = 0; i < check->n; i++)
    g_hash_table_insert (self->rests, (char *) pp_panel_placement (check->panel, i)->id,
                         check->rests[i]);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

static void
planned_cb (PpChecker    *checker,
            const PpPlan *plan,
            PpDocument   *self)
{
  if (plan->check != self->check)
    return;
  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_clear_pointer (&self->plan, pp_plan_unref);
  self->plan = pp_plan_ref (plan);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

static void judge_art (PpDocument *self);

/* What goes to the thread that judges the art. */
typedef struct
{
  const PpPanel *panel;
  PpGallery     *previous; /* nullable */
} Judging;

static void
free_judging (gpointer data)
{
  Judging *judging = data;

  pp_panel_unref (judging->panel);
  pp_gallery_unref (judging->previous);
  g_free (judging);
}

static void
judge_in_thread (GTask        *task,
                 gpointer      source,
                 gpointer      data,
                 GCancellable *cancellable)
{
  const Judging *judging = data;

  g_task_return_pointer (task, pp_gallery_new (judging->panel, judging->previous),
                         (GDestroyNotify) pp_gallery_unref);
}

static void
judged_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (PpDocument) self = data;
  g_autoptr (PpGallery) gallery = g_task_propagate_pointer (G_TASK (result), NULL);
  const Judging *judging = g_task_get_task_data (G_TASK (result));

  if (gallery == NULL || self->checker == NULL)
    return;
  pp_document_set_gallery (self, gallery);
  if (judging->panel->tray != pp_document_get_panel (self)->tray)
    judge_art (self);
}

/* Judging a drawing takes as long as drawing it: pieces are drawn plain until it is done. The
 * document is not the task's source, for the last of a task may go in its thread. */
static void
judge_art (PpDocument *self)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, judged_cb, g_object_ref (self));
  Judging *judging = g_new0 (Judging, 1);

  judging->panel = pp_panel_ref (pp_document_get_panel (self));
  judging->previous = self->gallery != NULL ? pp_gallery_ref (self->gallery) : NULL;
  g_task_set_task_data (task, judging, free_judging);
  g_task_run_in_thread (task, judge_in_thread);
}

/* After any change of the present panel. */
static void
follow (PpDocument    *self,
        const PpPanel *before,
        gboolean       was_saved)
{
  const PpPanel *panel = pp_document_get_panel (self);

  gboolean pruned = pp_document_prune_chosen (self);

  if (panel->tray != before->tray)
    judge_art (self);
  pp_checker_ask (self->checker, panel);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHANGED], 0);
  if (pruned)
    g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHOSEN], 0);
  if (was_saved != pp_document_is_saved (self))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

static void
pp_document_get_property (GObject    *object,
                          guint       prop_id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  PpDocument *self = PP_DOCUMENT (object);

  switch (prop_id)
    {
    case PROP_SAVED:
      g_value_set_boolean (value, pp_document_is_saved (self));
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
pp_document_dispose (GObject *object)
{
  PpDocument *self = PP_DOCUMENT (object);

  if (self->checker != NULL)
    {
      pp_checker_stop (self->checker);
      g_signal_handlers_disconnect_by_data (self->checker, self);
    }
  g_clear_object (&self->checker);
  G_OBJECT_CLASS (pp_document_parent_class)->dispose (object);
}

static void
pp_document_finalize (GObject *object)
{
  PpDocument *self = PP_DOCUMENT (object);

  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_clear_pointer (&self->known, g_ptr_array_unref);
  g_clear_pointer (&self->left_out, g_ptr_array_unref);
  g_clear_pointer (&self->rests, g_hash_table_unref);
  g_clear_pointer (&self->plan, pp_plan_unref);
  g_clear_pointer (&self->check, pp_check_unref);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  g_clear_pointer (&self->scene, pp_scene_unref);
  g_clear_pointer (&self->history, pp_history_free);
  g_clear_pointer (&self->saved, pp_panel_unref);
  g_clear_pointer (&self->chosen_ids, g_strfreev);
  g_clear_object (&self->file);
  G_OBJECT_CLASS (pp_document_parent_class)->finalize (object);
}

static void
pp_document_class_init (PpDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  static const char * const names[] = { "changed", "chosen", "checked", "drawn" };
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = pp_document_get_property;
  object_class->dispose = pp_document_dispose;
  object_class->finalize = pp_document_finalize;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    pp_document_signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                           0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  pp_document_signals[PP_DOCUMENT_REFUSED]
    = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 1, G_TYPE_STRING);
  props[PROP_SAVED] = g_param_spec_boolean ("saved", NULL, NULL, TRUE, flags);
  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
pp_document_init (PpDocument *self)
{
  self->findings = g_ptr_array_new ();
  self->known = g_ptr_array_new ();
  self->rests = g_hash_table_new (g_str_hash, g_str_equal);
  self->chosen_ids = g_new0 (char *, 1);
  self->checker = pp_checker_new ();
  g_signal_connect (self->checker, "checked", G_CALLBACK (checked_cb), self);
  g_signal_connect (self->checker, "planned", G_CALLBACK (planned_cb), self);
}

PpDocument *
pp_document_new (const PpPanel *panel,
                 GFile         *file)
{
  PpDocument *self;

  g_return_val_if_fail (panel != NULL, NULL);

  self = g_object_new (PP_TYPE_DOCUMENT, NULL);
  self->history = pp_history_new (panel);
  self->saved = pp_panel_ref (panel);
  g_set_object (&self->file, file);
  judge_art (self);
  pp_checker_ask (self->checker, panel);
  return self;
}

const PpPanel *
pp_document_get_panel (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_present (self->history);
}

PpScene *
pp_document_get_scene (PpDocument *self)
{
  PpScene *next;

  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);

  if (self->scene != NULL && self->scene->panel == pp_document_get_panel (self))
    return self->scene;
  next = pp_scene_new (pp_document_get_panel (self), self->scene);
  g_clear_pointer (&self->scene, pp_scene_unref);
  self->scene = next;
  return next;
}

PpGallery *
pp_document_get_gallery (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->gallery;
}

void
pp_document_set_gallery (PpDocument *self,
                         PpGallery  *gallery)
{
  g_return_if_fail (PP_IS_DOCUMENT (self) && gallery != NULL);

  g_ptr_array_set_size (self->findings, 0);
  g_ptr_array_set_size (self->known, 0);
  g_clear_pointer (&self->left_out, g_ptr_array_unref);
  pp_gallery_ref (gallery);
  g_clear_pointer (&self->gallery, pp_gallery_unref);
  self->gallery = gallery;
  self->left_out = pp_left_out_findings (pp_document_get_panel (self), gallery);
  gather_findings (self);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_DRAWN], 0);
  if (self->check != NULL)
    g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHECKED], 0);
}

gboolean
pp_document_take (PpDocument *self,
                  PpPanel    *next,
                  GError     *error,
                  const char *label,
                  const char *merge_key)
{
  g_autoptr (PpPanel) before = NULL;
  gboolean was_saved;

  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);

  if (next == NULL)
    {
      g_signal_emit (self, pp_document_signals[PP_DOCUMENT_REFUSED], 0,
                     error != NULL ? error->message : _("That cannot be done."));
      g_clear_error (&error);
      return FALSE;
    }
  before = pp_panel_ref (pp_document_get_panel (self));
  was_saved = pp_document_is_saved (self);
  if (next != before)
    {
      pp_history_push (self->history, next, label, merge_key);
      follow (self, before, was_saved);
    }
  pp_panel_unref (next);
  return TRUE;
}

void
pp_document_seal (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  pp_history_seal (self->history);
}

static void
step (PpDocument *self,
      gboolean  (*walk) (PpHistory *))
{
  g_autoptr (PpPanel) before = pp_panel_ref (pp_document_get_panel (self));
  gboolean was_saved = pp_document_is_saved (self);

  if (walk (self->history))
    follow (self, before, was_saved);
}

void
pp_document_undo (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_undo);
}

void
pp_document_take_back (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_drop);
}

void
pp_document_redo (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_redo);
}

const char *
pp_document_get_undo (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_undo (self->history);
}

const char *
pp_document_get_redo (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_redo (self->history);
}

const PpCheck *
pp_document_get_check (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->check;
}

const PpPlan *
pp_document_get_plan (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->plan != NULL && self->plan->check == self->check ? self->plan : NULL;
}

GPtrArray *
pp_document_get_findings (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->findings;
}

GPtrArray *
pp_document_get_known (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->known;
}

const PpRest *
pp_document_get_rest (PpDocument *self,
                      const char *placement)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self) && placement != NULL, NULL);
  return g_hash_table_lookup (self->rests, placement);
}

double
pp_document_get_top (PpDocument *self,
                     const char *placement)
{
  const PpRest *rest = pp_document_get_rest (self, placement);

  return rest == NULL || rest->state == PP_STATE_FLOATS ? (double) NAN : rest->top;
}

double
pp_document_get_base (PpDocument *self,
                      const char *placement)
{
  const PpRest *rest = pp_document_get_rest (self, placement);

  return rest == NULL || rest->state == PP_STATE_FLOATS ? (double) NAN : rest->base;
}

gboolean
pp_document_is_checked (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);
  return self->check != NULL && self->check->panel == pp_document_get_panel (self);
}

GFile *
pp_document_get_file (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->file;
}

gboolean
pp_document_is_saved (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);
  return self->saved == pp_document_get_panel (self);
}

void
pp_document_set_saved (PpDocument    *self,
                       const PpPanel *panel,
                       GFile         *file)
{
  const PpPanel *before;

  g_return_if_fail (PP_IS_DOCUMENT (self) && panel != NULL);

  before = self->saved;
  self->saved = pp_panel_ref (panel);
  g_clear_pointer (&before, pp_panel_unref);
  g_set_object (&self->file, file);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

void
pp_document_set_lost (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));

  g_clear_pointer (&self->saved, pp_panel_unref);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

static char *
name_of_file (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *shown = g_filename_display_name (base);

  if (g_str_has_suffix (shown, ".petalpane"))
    shown[strlen (shown) - strlen (".petalpane")] = '\0';
  return g_steal_pointer (&shown);
}

char *
pp_document_dup_title (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);

  if (*pp_document_get_panel (self)->title != '\0')
    return g_strdup (pp_document_get_panel (self)->title);
  if (self->file != NULL)
    return name_of_file (self->file);
  return g_strdup (_("Untitled panel"));
}
