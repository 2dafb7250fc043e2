/* canvas-groups.c: the groups that the eye sees, each in a line about it, with its flowers counted.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * As the last check found them: by name, or by nearness. An even number, of which one more or one
 * fewer looks livelier, has a broken line.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "desk/ink.h"
#include "panel/i18n.h"
#include "shape/polygon.h"

#define ROUND 10.0   /* px from the pieces to the line about them */
#define ROUND_STEPS 12
#define COUNTED 8    /* above so many flowers the eye does not count */

/* The corners of its outline as it lies now, px. */
static void
add_corners (PpCanvas     *self,
             GArray       *points,
             const PpBody *body)
{
  guint n;
  const PpPoint *p = pp_outline_get_ring (body->outline, 0, &n);
  PpPoint carried = pp_canvas_get_carried (self, body);

  for (guint i = 0; i + 1 < n; i++)
    {
      PpPoint px = pp_canvas_to_px (self, p[i].x + carried.x, p[i].y + carried.y);

      g_array_append_val (points, px);
    }
}

/* The hull of the members' outlines. (transfer full) */
static GArray *
find_hull (PpCanvas      *self,
           const PpCheck *check,
           const PpGroup *group)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  GArray *hull = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  for (guint i = 0; i < group->n_members; i++)
    {
      const char *id = pp_panel_placement (check->panel, group->members[i])->id;
      const PpBody *body = pp_canvas_find_body (self, id);

      if (body != NULL)
        add_corners (self, points, body);
    }
  g_array_set_size (hull, points->len);
  if (points->len > 0)
    g_array_set_size (hull, pp_convex_hull ((PpPoint *) points->data, points->len,
                                            (PpPoint *) hull->data));
  return hull;
}

/* The hull of circles about the corners of a hull: it keeps off the pieces. (transfer full) */
static GArray *
grow (const GArray *hull)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (PpPoint));
  GArray *grown = g_array_new (FALSE, FALSE, sizeof (PpPoint));

  for (guint i = 0; i < hull->len; i++)
    for (guint k = 0; k < ROUND_STEPS; k++)
      {
        PpPoint corner = g_array_index (hull, PpPoint, i);
        double turn = 2 * G_PI * k / ROUND_STEPS;
        PpPoint p = { corner.x + ROUND * cos (turn), corner.y + ROUND * sin (turn) };

        g_array_append_val (points, p);
      }
  g_array_set_size (grown, points->len);
  g_array_set_size (grown, pp_convex_hull ((PpPoint *) points->data, points->len,
                                           (PpPoint *) grown->data));
  return grown;
}

/* (transfer full) */
static char *
name_group (const PpGroup *group)
{
  g_autofree char *flowers = g_strdup_printf (ngettext ("%u flower", "%u flowers", group->flowers),
                                              group->flowers);

  if (group->name == NULL)
    return g_steal_pointer (&flowers);
  /* Translators: a group of pieces by its name, and its flowers: "Oxeyes: 3 flowers". */
  return g_strdup_printf (_("%s: %s"), group->name, flowers);
}

/* Gives where its name goes, px; FALSE if none of it is there any more. */
static gboolean
draw_group (PpCanvas        *self,
            cairo_t         *cr,
            const PpPalette *palette,
            const PpCheck   *check,
            const PpGroup   *group,
            PpPoint         *top)
{
  g_autoptr (GArray) hull = find_hull (self, check, group);
  g_autoptr (GArray) line = NULL;
  gboolean is_even = group->flowers > 0 && group->flowers <= COUNTED && group->flowers % 2 == 0;
  PpBox box = pp_box_empty ();

  if (hull->len == 0)
    return FALSE;
  line = grow (hull);
  cairo_new_path (cr);
  for (guint i = 0; i < line->len; i++)
    {
      PpPoint p = g_array_index (line, PpPoint, i);

      cairo_line_to (cr, p.x, p.y);
      box = pp_box_add_point (box, p);
    }
  cairo_close_path (cr);
  if (is_even)
    cairo_set_dash (cr, (double[]) { 7, 5 }, 2, 0);
  pp_ink_stroke (cr, palette, is_even ? &palette->caution : &palette->accent, 1.5);
  cairo_set_dash (cr, NULL, 0, 0);
  *top = (PpPoint) { pp_box_middle (box).x, box.y0 };
  return TRUE;
}

void
pp_canvas_draw_groups (PpCanvas        *self,
                       cairo_t         *cr,
                       const PpPalette *palette,
                       GArray          *taken)
{
  const PpCheck *check = pp_document_get_check (self->document);
  guint n = check != NULL ? check->composition->n_groups : 0;
  g_autofree PpPoint *tops = g_new (PpPoint, n);
  g_autofree gboolean *are_there = g_new (gboolean, n);

  for (guint i = 0; i < n; i++)
    are_there[i] = draw_group (self, cr, palette, check, &check->composition->groups[i], &tops[i]);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = name_group (&check->composition->groups[i]);

      if (are_there[i])
        pp_canvas_draw_slip_clear (self, cr, palette, name, tops[i], taken);
    }
}
