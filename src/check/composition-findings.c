/* composition-findings.c: even groups of flowers, pieces over the edge, more placed than there are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/overhang.h"
#include "check/piece-name.h"
#include "check/questions.h"
#include "check/said.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#define MOST_COUNTED 8 /* flowers; above, the eye does not count */

static PpPoint
middle_of_group (const PpScene *scene,
                 const PpGroup *group)
{
  PpBox box = pp_box_empty ();

  for (guint i = 0; i < group->n_members; i++)
    box = pp_box_union (box, scene->bodies[group->members[i]]->box);
  return pp_box_middle (box);
}

static void
ask_group (PpFindings    *findings,
           const PpScene *scene,
           const PpGroup *group)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  PpFinding finding = { .code = "even-group", .level = PP_LEVEL_CAUTION,
                        .origin = PP_ORIGIN_PRACTICE, .value = group->flowers, .limit = NAN };
  char *text;

  if (group->flowers == 0 || group->flowers % 2 == 1 || group->flowers > MOST_COUNTED)
    return;
  for (guint i = 0; i < group->n_members; i++)
    g_ptr_array_add (ids, (gpointer) scene->bodies[group->members[i]]->placement->id);
  g_ptr_array_add (ids, NULL);
  finding.about = (const char * const *) ids->pdata;
  finding.at = middle_of_group (scene, group);
  if (group->name != NULL)
    /* Translators: the maker's name of a group, in quotes. */
    text = g_strdup_printf (_("“%s” is a group of %u flowers. An odd number looks livelier: one "
                              "more, one fewer, or group them another way."), group->name,
                            group->flowers);
  else
    text = g_strdup_printf (_("%u flowers stand together. An odd number looks livelier: one more, "
                              "one fewer, or group them another way."), group->flowers);
  pp_findings_add (findings, finding, text);
}

static gboolean
say_group_again (PpFindings    *findings,
                 const PpGroup *group)
{
  if (group->stays)
    return pp_findings_say_again (findings, PP_SAID_OF_GROUP, group->members[0]);
  pp_findings_say_anew (findings, PP_SAID_OF_GROUP, group->members[0]);
  return FALSE;
}

/* Said of the placements that groups begin with. */
static void
ask_groups (PpFindings          *findings,
            const PpScene       *scene,
            const PpComposition *composition)
{
  for (guint i = 0, k = 0; i < scene->n_bodies; i++)
    {
      if (k == composition->n_groups || composition->groups[k].members[0] > i)
        {
          pp_findings_say_anew (findings, PP_SAID_OF_GROUP, i);
          continue;
        }
      if (!say_group_again (findings, &composition->groups[k]))
        ask_group (findings, scene, &composition->groups[k]);
      k++;
    }
  pp_findings_end_kind (findings, PP_SAID_OF_GROUP);
}

static void
ask_overhang (PpFindings    *findings,
              const PpScene *scene,
              guint          index,
              double         overhang)
{
  const PpBody *body = scene->bodies[index];
  double limit = body->width / 2;
  gboolean is_far = pp_is_over (overhang, limit);
  g_autofree char *name = NULL;
  g_autofree char *distance = NULL;
  PpFinding finding = {
    .code = "overhang",
    .level = is_far ? PP_LEVEL_CAUTION : PP_LEVEL_NOTE,
    .at = body->centroid,
    .about = PP_ABOUT (body->placement->id),
    .value = overhang,
    .limit = limit,
  };

  if (overhang <= PP_NO_OVERHANG)
    return;
  name = pp_findings_name (findings, scene, index);
  distance = pp_length_format (overhang, scene->panel->units);
  if (overhang <= 0)
    pp_findings_add (findings, finding,
                     g_strdup_printf (_("%s bridges a gap in the glass. Allow for it when packing "
                                        "and hanging."), name));
  else if (is_far)
    pp_findings_add (findings, finding,
                     g_strdup_printf (_("%s reaches %s beyond the edge, more than half its width. "
                                        "Move it farther onto the glass."), name, distance));
  else
    pp_findings_add (findings, finding,
                     g_strdup_printf (_("%s reaches %s beyond the edge. Allow for it when packing "
                                        "and hanging."), name, distance));
}

/* Where the first copy lies that is one too many. */
static PpPoint
find_extra (const PpScene *scene,
            const PpPiece *piece)
{
  guint left = piece->count;

  for (guint i = 0; i < scene->n_bodies; i++)
    if (scene->bodies[i]->piece == piece && left-- == 0)
      return scene->bodies[i]->centroid;
  return scene->background_centroid;
}

/* More are placed than there are. */
static void
ask_stock (PpFindings    *findings,
           const PpScene *scene,
           const PpPiece *piece,
           guint          placed)
{
  PpFinding finding = {
    .code = "stock",
    .level = PP_LEVEL_FAULT,
    .about = PP_ABOUT (piece->id),
    .value = placed,
    .limit = piece->count,
  };

  finding.at = find_extra (scene, piece);
  pp_findings_add (findings, finding,
                   g_strdup_printf (ngettext ("%s: %u is placed, but there are only %u. Make more "
                                              "or take some off.",
                                              "%s: %u are placed, but there are only %u. Make more "
                                              "or take some off.", placed),
                                    pp_piece_get_title (piece), placed, piece->count));
}

/* Copies that stay where they are stay as many. */
static gboolean
has_changed_copy (const PpFindings *findings,
                  const PpScene    *scene,
                  const PpPiece    *piece)
{
  if (!findings->same_pieces)
    return TRUE;
  for (guint i = 0; i < scene->n_bodies; i++)
    if (!findings->unchanged[i] && scene->bodies[i]->piece == piece)
      return TRUE;
  return FALSE;
}

static void
ask_tray (PpFindings         *findings,
          const PpScene      *scene,
          const PpPieceNames *names)
{
  for (guint i = 0; i < scene->panel->tray->len; i++)
    {
      const PpPiece *piece = pp_panel_piece (scene->panel, i);
      guint placed = pp_piece_names_get_copies (names, piece);

      if (placed <= piece->count)
        pp_findings_say_anew (findings, PP_SAID_OF_STOCK, i);
      else if (has_changed_copy (findings, scene, piece))
        {
          pp_findings_say_anew (findings, PP_SAID_OF_STOCK, i);
          ask_stock (findings, scene, piece, placed);
        }
      else
        pp_findings_repeat (findings, PP_SAID_OF_STOCK, i);
    }
  pp_findings_end_kind (findings, PP_SAID_OF_STOCK);
}

void
pp_ask_composition (PpFindings    *findings,
                    const PpCheck *check)
{
  const PpScene *scene = check->scene;
  const PpComposition *composition = check->composition;

  ask_groups (findings, scene, composition);
  for (guint i = 0; i < scene->n_bodies; i++)
    if (!pp_findings_say_again (findings, PP_SAID_OF_OVERHANG, i))
      ask_overhang (findings, scene, i, composition->overhang[i]);
  pp_findings_end_kind (findings, PP_SAID_OF_OVERHANG);
  ask_tray (findings, scene, check->names);
}
