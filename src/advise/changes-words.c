/* changes-words.c: what was changed, as the maker would say it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/changes-words.h"

#include "check/piece-name.h"
#include "panel/hole-name.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

/* (transfer full) */
static char *
name_in (const PpScene *scene,
         const char    *id)
{
  guint index = 0;

  if (pp_panel_find_placement (scene->panel, id, &index) == NULL)
    return g_strdup (id);
  return pp_piece_name_of (scene, index);
}

/* "9 mm to the left"; what is too little to be shown is left out. */
static void
add_way (GPtrArray *said,
         PpPoint    by,
         PpUnits    units)
{
  g_autofree char *across = pp_length_format (fabs (by.x), units);
  g_autofree char *down = pp_length_format (fabs (by.y), units);
  double least = units == PP_UNITS_INCH ? PP_MM_PER_INCH / 32 : 0.05;

  if (fabs (by.x) >= least)
    g_ptr_array_add (said, g_strdup_printf (by.x < 0 ? _("%s to the left") : _("%s to the right"),
                                            across));
  if (fabs (by.y) >= least)
    g_ptr_array_add (said, g_strdup_printf (by.y < 0 ? _("%s up") : _("%s down"), down));
}

/* "Fern frond: 9 mm to the left, turned by 20° clockwise" (transfer full) */
static char *
say_move (const char *name,
          PpPoint     by,
          double      turn,
          PpUnits     units)
{
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *angle = pp_angle_format (fabs (turn));
  g_autofree char *list = NULL;

  add_way (said, by, units);
  if (fabs (turn) >= PP_TIE)
    g_ptr_array_add (said, g_strdup_printf (turn < 0 ? _("turned by %s counterclockwise")
                                                     : _("turned by %s clockwise"), angle));
  if (said->len == 0)
    g_ptr_array_add (said, g_strdup (_("moved by a hair")));
  g_ptr_array_add (said, NULL);
  list = g_strjoinv (C_("between parts of a list", ", "), (char **) said->pdata);
  /* Translators: a piece or hole, and what was done to it: "Dock leaf: 9 mm to the left, 4 mm
   * down". */
  return g_strdup_printf (_("%s: %s"), name, list);
}

/* Where in the stack it lies now: right over which other piece. (transfer full) */
static char *
say_restack (const char    *name,
             const char    *id,
             const PpScene *after)
{
  guint index = 0;
  g_autofree char *below = NULL;

  if (pp_panel_find_placement (after->panel, id, &index) == NULL || index == 0)
    return g_strdup_printf (_("%s laid first, under all others"), name);
  below = pp_piece_name_of (after, index - 1);
  return g_strdup_printf (_("%s laid right after %s"), name, below);
}

static char *
say_add (const PpScene *after,
         const char    *id)
{
  guint index = 0;
  const PpPlacement *placement = pp_panel_find_placement (after->panel, id, &index);
  const PpPiece *piece = pp_panel_get_piece_of (after->panel, placement);
  g_autofree char *place = pp_place_format (after->panel, after->bodies[index]->centroid);

  return g_strdup_printf (_("One more %s from the tray, %s"),
                          pp_piece_get_title (piece), place);
}

static guint
count_members (const PpPanel *panel,
               const char    *group)
{
  guint n = 0;

  for (guint i = 0; i < panel->placements->len; i++)
    n += g_strcmp0 (pp_panel_placement (panel, i)->group, group) == 0;
  return n;
}

/* The name of a group that was made for it alone says nothing yet. */
static char *
say_group (const char    *name,
           const PpScene *after,
           const char    *id)
{
  const PpPlacement *now = pp_panel_find_placement (after->panel, id, NULL);

  if (now->group == NULL)
    return g_strdup_printf (_("%s out of its group"), name);
  if (count_members (after->panel, now->group) == 1)
    return g_strdup_printf (_("%s into a group of its own"), name);
  return g_strdup_printf (_("%s into the group %s"), name, now->group);
}

static char *
say_wire (double  longer,
          PpUnits units)
{
  g_autofree char *length = pp_length_format (fabs (longer), units);

  return g_strdup_printf (longer < 0 ? _("The wire %s shorter") : _("The wire %s longer"), length);
}

char *
pp_change_say (const PpChange *self,
               const PpScene  *before,
               const PpScene  *after)
{
  PpUnits units = after->panel->units;
  g_autofree char *name = self->kind == PP_CHANGE_HOLE
                            ? g_strdup_printf (_("The %s hole"), pp_hole_name (self->about))
                            : name_in (before, self->about);

  switch (self->kind)
    {
    case PP_CHANGE_MOVE:
    case PP_CHANGE_HOLE:
      return say_move (name, self->by, self->turn, units);
    case PP_CHANGE_RESTACK:
      return say_restack (name, self->about, after);
    case PP_CHANGE_ADD:
      return say_add (after, self->about);
    case PP_CHANGE_REMOVE:
      return g_strdup_printf (_("%s taken off"), name);
    case PP_CHANGE_GROUP:
      return say_group (name, after, self->about);
    case PP_CHANGE_WIRE:
      return say_wire (self->by.x, units);
    }
  g_return_val_if_reached (NULL);
}
