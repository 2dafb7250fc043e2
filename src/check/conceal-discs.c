/* conceal-discs.c: how much of the knots and holes the pieces hide.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The disc is split along the pieces into faces, each with what shines through all that lies over
 * it. A face that is hidden is done with, and so is one that all the rest cannot hide; faces through
 * which the same share shines become one, so that a heap of pieces of the same glass stays a handful
 * of faces.
 */
#include "check/conceal-private.h"

#include "check/cover.h"
#include "check/finding.h"

/* A part of the disc that is not hidden yet. */
typedef struct
{
  PpRegion *region;
  double    through;
} Face;

static void
face_clear (gpointer data)
{
  pp_region_unref (((Face *) data)->region);
}

static GArray *
faces_new (void)
{
  GArray *faces = g_array_new (FALSE, FALSE, sizeof (Face));

  g_array_set_clear_func (faces, face_clear);
  return faces;
}

/* Takes `region`. */
static void
add_face (GArray   *faces,
          PpRegion *region,
          double    through,
          double    opaque)
{
  Face face = { region, through };

  if (pp_region_get_area (region) <= 0 || !pp_is_over (through, opaque))
    {
      pp_region_unref (region);
      return;
    }
  for (guint i = 0; i < faces->len; i++)
    {
      Face *other = &g_array_index (faces, Face, i);

      if (fabs (other->through - through) <= PP_TIE * PP_TIE)
        {
          PpRegion *both[] = { other->region, region };

          other->region = pp_region_union (both, G_N_ELEMENTS (both));
          pp_region_unref (both[0]);
          pp_region_unref (both[1]);
          return;
        }
    }
  g_array_append_val (faces, face);
}

typedef struct
{
  PpRegion *region;  /* of the whole piece, borrowed */
  double    through;
} Screen;

static int
compare_screens (gconstpointer a,
                 gconstpointer b)
{
  const Screen *p = a, *q = b;

  return p->through < q->through ? -1 : p->through > q->through;
}

/* mm beyond all that can matter, so that rounding does not. */
#define SPARE 1.0

/* What a piece covers of `reach` when drawn in by `distance`. Only its border near by is swept:
 * the rest is cut off first, far enough away. (transfer full) */
static PpRegion *
draw_in (PpRegion *piece,
         PpBox     reach,
         double    distance)
{
  PpBox box = pp_box_grow (reach, distance + SPARE);
  const PpPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 },
                              { box.x0, box.y1 } };
  g_autoptr (PpOutline) outline = pp_outline_new_ring (corners, G_N_ELEMENTS (corners));
  g_autoptr (PpRegion) window = pp_region_new (outline);
  g_autoptr (PpRegion) near = pp_region_intersection (piece, window);

  return pp_region_inset (near, distance);
}

/* A disc on the front face and how far pieces are drawn in, mm. */
typedef struct
{
  PpPoint centre;
  double  radius;
  double  drawn_in;
} Disc;

/* TRUE where no border comes near the disc: then the piece covers all of it or nothing. */
static gboolean
is_plain (const Disc   *disc,
          const PpBody *body,
          gboolean     *covers)
{
  PpCover cover = pp_cover_of_body (body);
  double reach = disc->radius + disc->drawn_in + PP_TIE;

  if (pp_cover_distance (&cover, disc->centre, reach + PP_TIE) < reach)
    return FALSE;
  *covers = pp_cover_contains (&cover, disc->centre);
  return TRUE;
}

/* The pieces whose borders part the disc, the darkest first: they leave the least to split.
 * `through` gets what shines through those that cover all of it. (transfer full) */
static GArray *
find_screens (const Disc    *disc,
              const PpScene *scene,
              PpRest       **rests,
              PpBox          reach,
              double        *through)
{
  GArray *screens = g_array_new (FALSE, FALSE, sizeof (Screen));

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      Screen screen = { body->region, body->piece->transmittance };
      gboolean covers;

      if (!pp_conceal_counts (rests, i) || !pp_box_meets (body->box, reach))
        continue;
      if (!is_plain (disc, body, &covers))
        g_array_append_val (screens, screen);
      else if (covers)
        *through *= body->piece->transmittance;
    }
  g_array_sort (screens, compare_screens);
  return screens;
}

/* Takes out the faces that stay in view though screens with this much light through them all lie
 * over them; gives their area. */
static double
take_shown (GArray *faces,
            double  through,
            double  opaque)
{
  double area = 0;

  for (guint i = faces->len; i > 0; i--)
    {
      const Face *face = &g_array_index (faces, Face, i - 1);

      if (!pp_is_over (face->through * through, opaque))
        continue;
      area += pp_region_get_area (face->region);
      g_array_remove_index (faces, i - 1);
    }
  return area;
}

/* Light through all screens from the one at `first` on. */
static double
get_through (GArray *screens,
             guint   first)
{
  double through = 1;

  for (guint i = first; i < screens->len; i++)
    through *= g_array_index (screens, Screen, i).through;
  return through;
}

/* `faces` split by one piece, or by what is left of it when drawn in; (transfer full). */
static GArray *
split_faces (GArray       *faces,
             const Screen *screen,
             PpBox         reach,
             double        drawn_in,
             double        opaque)
{
  g_autoptr (PpRegion) region = drawn_in > 0 ? draw_in (screen->region, reach, drawn_in)
                                             : pp_region_ref (screen->region);
  GArray *split = faces_new ();

  for (guint i = 0; i < faces->len; i++)
    {
      const Face *face = &g_array_index (faces, Face, i);

      add_face (split, pp_region_intersection (face->region, region),
                face->through * screen->through, opaque);
      add_face (split, pp_region_difference (face->region, region), face->through, opaque);
    }
  return split;
}

static double
share_of (Disc           disc,
          const PpScene *scene,
          PpRest       **rests)
{
  g_autoptr (PpRegion) region = pp_region_new_disc (disc.centre, disc.radius);
  double opaque = pp_panel_get_limit (scene->panel, PP_LIMIT_OPAQUE);
  double area = pp_region_get_area (region), through = 1, shown = 0;
  g_autoptr (GArray) faces = faces_new ();
  g_autoptr (GArray) screens = NULL;

  if (area <= 0) /* nothing to see */
    return 1;
  screens = find_screens (&disc, scene, rests, pp_region_get_box (region), &through);
  add_face (faces, pp_region_ref (region), through, opaque);
  for (guint i = 0; i < screens->len && faces->len > 0; i++)
    {
      GArray *split;

      shown += take_shown (faces, get_through (screens, i), opaque);
      split = split_faces (faces, &g_array_index (screens, Screen, i), pp_region_get_box (region),
                           disc.drawn_in, opaque);

      g_array_unref (faces);
      faces = split;
    }
  for (guint i = 0; i < faces->len; i++)
    shown += pp_region_get_area (g_array_index (faces, Face, i).region);
  return CLAMP (1 - shown / area, 0, 1);
}

/* `previous` (nullable): the shares of the same disc before `changes`. */
static PpDiscShare
look_at_disc (const PpScene     *scene,
              PpRest           **rests,
              const PpHole      *hole,
              double             diameter,
              double             drawn_in,
              const PpDiscShare *previous,
              GArray            *changes)
{
  Disc disc = { { hole->x, hole->y }, diameter / 2, 0 }, barely = disc;
  double reach = diameter / 2 + PP_TIE;
  PpBox box = { hole->x - reach, hole->y - reach, hole->x + reach, hole->y + reach };

  if (previous != NULL && !pp_changes_meet (changes, box))
    return *previous;
  barely.drawn_in = drawn_in;
  return (PpDiscShare) {
    .share = share_of (disc, scene, rests),
    .barely = isnan (drawn_in) ? (double) NAN : share_of (barely, scene, rests),
  };
}

void
pp_conceal_share_discs (PpConceal       *self,
                        const PpScene   *scene,
                        PpRest         **rests,
                        const PpConceal *previous,
                        GArray          *changes)
{
  const PpPanel *panel = scene->panel;
  double place = pp_panel_get_limit (panel, PP_LIMIT_PLACE);

  self->n_holes = panel->holes->len;
  self->holes = g_new0 (PpDiscShare, self->n_holes);
  for (guint i = 0; i < self->n_holes; i++)
    self->holes[i] = look_at_disc (scene, rests, pp_panel_hole (panel, i),
                                   pp_panel_hole (panel, i)->diameter, NAN,
                                   previous != NULL ? &previous->holes[i] : NULL, changes);
  for (guint k = 0; k < scene->n_knots; k++)
    self->knots[k] = look_at_disc (scene, rests, pp_scene_knot_hole (scene, k),
                                   panel->wire->knot_diameter, place,
                                   previous != NULL ? &previous->knots[k] : NULL, changes);
}
