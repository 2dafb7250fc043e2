/* pack.c: outlines laid side by side on as few pages as will do, in their order.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Page and pieces are rasters of small squares, a row a run of bits; a square is taken if anything
 * of the outline, grown by half the gap, may touch it. Each piece goes where its foot comes to lie
 * highest, then farthest left.
 */
#include "config.h"

#include "sheet/pack.h"

#include "art/draw.h"
#include "shape/polygon.h"
#include "sheet/bits.h"

#include <math.h>

#define STEP 1.5           /* mm, side of a square */
#define MOST_SQUARES 300   /* along the longer side of a page */
#define LABEL_AWAY 1.2     /* mm, of a label over its outline */
#define LOOK 1.0           /* mm, between places tried for a label within */
#define MOST_LOOKS 60      /* each way */
#define FINE_TURNS 24      /* that a large piece is tried in */

typedef struct
{
  double width;
  double height;
  double step;
} Page;

/* An outline turned, at the origin, with its label. */
typedef struct
{
  PpOutline *outline;
  PpPoint    label_at;
  PpBox      box;      /* of both */
} Lie;

typedef struct
{
  double sine;
  double cosine;
} Turn;

static PpPoint
turn_point (PpPoint       p,
            gconstpointer data)
{
  const Turn *turn = data;

  return (PpPoint) { p.x * turn->cosine - p.y * turn->sine,
                     p.x * turn->sine + p.y * turn->cosine };
}

static gboolean
is_inside (const PpOutline *outline,
           PpPoint          p)
{
  gboolean inside = FALSE;

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *ring = pp_outline_get_ring (outline, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        if ((ring[i].y > p.y) != (ring[i + 1].y > p.y)
            && p.x < ring[i].x + (ring[i + 1].x - ring[i].x) * (p.y - ring[i].y)
                                 / (ring[i + 1].y - ring[i].y))
          inside = !inside;
    }
  return inside;
}

/* A disc around the label is to lie within, so that the answer does not hang on the turn. */
gboolean
pp_pack_find_inside (const PpOutline *outline,
                     PpBox            window,
                     PpPoint          size,
                     PpPoint         *at)
{
  PpBox own = pp_outline_get_box (outline);
  PpBox box = { fmax (own.x0, window.x0), fmax (own.y0, window.y0), fmin (own.x1, window.x1),
                fmin (own.y1, window.y1) };
  double farthest = hypot (size.x, size.y) / 2;
  double step = fmax (LOOK, fmax (pp_box_width (box), pp_box_height (box)) / MOST_LOOKS);
  gboolean found = FALSE;

  for (double y = box.y0 + farthest; y <= box.y1 - farthest; y += step)
    for (double x = box.x0 + farthest; x <= box.x1 - farthest; x += step)
      {
        PpPoint p = { x, y };
        double reach = is_inside (outline, p) ? pp_outline_border_distance (outline, p) : 0;

        if (reach <= farthest)
          continue;
        farthest = reach;
        *at = p;
        found = TRUE;
      }
  return found;
}

static PpPoint
find_top (const PpOutline *outline)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (outline, 0, &n);
  PpPoint top = ring[0];

  for (guint i = 1; i < n; i++)
    if (ring[i].y < top.y)
      top = ring[i];
  return top;
}

/* `inside`: where its label lies within it; NULL if nowhere. */
static Lie
lie_of (const PpPacked *item,
        const PpPoint  *inside,
        double          degrees)
{
  PpPoint half = { item->label.x / 2, item->label.y / 2 };
  Turn turn;
  Lie lie;

  pp_sincos_degrees (degrees, &turn.sine, &turn.cosine);
  lie.outline = pp_outline_map (item->outline, turn_point, &turn);
  lie.box = pp_outline_get_box (lie.outline);
  if (inside != NULL)
    {
      lie.label_at = turn_point (*inside, &turn);
      return lie;
    }
  lie.label_at = find_top (lie.outline);
  lie.label_at.y -= LABEL_AWAY + half.y;
  lie.box = pp_box_union (lie.box, (PpBox) { lie.label_at.x - half.x, lie.label_at.y - half.y,
                                             lie.label_at.x + half.x, lie.label_at.y + half.y });
  return lie;
}

static gboolean
fits_page (const Lie  *lie,
           const Page *page)
{
  return pp_box_width (lie->box) <= page->width && pp_box_height (lie->box) <= page->height;
}

/* What the outline and its label take of the page, grown by half the gap. */
static PpBits *
mask_new (const PpPacked *item,
          const Lie      *lie,
          const Page     *page)
{
  double grow = PP_PACK_GAP / 2;
  int width = (int) ceil ((pp_box_width (lie->box) + PP_PACK_GAP) / page->step);
  int height = (int) ceil ((pp_box_height (lie->box) + PP_PACK_GAP) / page->step);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, width, height);
  cairo_t *cr = cairo_create (surface);
  PpBits *bits;

  cairo_scale (cr, 1 / page->step, 1 / page->step);
  cairo_translate (cr, grow - lie->box.x0, grow - lie->box.y0);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, PP_PACK_GAP + page->step / 2);
  pp_draw_outline_path (cr, lie->outline);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);
  cairo_rectangle (cr, lie->label_at.x - item->label.x / 2, lie->label_at.y - item->label.y / 2,
                   item->label.x, item->label.y);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);
  cairo_destroy (cr);
  bits = pp_bits_new_from_mask (surface);
  cairo_surface_destroy (surface);
  return bits;
}

static void
lay (PpPacked   *item,
     const Lie  *lie,
     const Page *page,
     int         x,
     int         y,
     double      degrees)
{
  PpPoint by = { x * page->step - lie->box.x0, y * page->step - lie->box.y0 };

  g_clear_pointer (&item->laid, pp_outline_unref);
  item->laid = pp_outline_move (lie->outline, by);
  item->label_at = (PpPoint) { lie->label_at.x + by.x, lie->label_at.y + by.y };
  item->turn = degrees;
}

/* In the best of `n_turns`; FALSE if the page has no room. */
static gboolean
try_page (PpPacked      *item,
          const PpPoint *inside,
          const Page    *page,
          PpBits        *taken,
          guint          n_turns)
{
  g_autoptr (PpBits) best = NULL;
  int best_x = 0, best_y = 0;
  int best_foot = G_MAXINT;

  for (guint i = 0; i < n_turns; i++)
    {
      double degrees = i * 360.0 / n_turns;
      Lie lie = lie_of (item, inside, degrees);
      g_autoptr (PpBits) mask = fits_page (&lie, page) ? mask_new (item, &lie, page) : NULL;
      int x, y;

      if (mask != NULL && pp_bits_find_room (taken, mask, &x, &y)
          && (best == NULL || y + mask->height < best_foot))
        {
          g_clear_pointer (&best, pp_bits_free);
          best_x = x;
          best_y = y;
          best_foot = y + mask->height;
          lay (item, &lie, page, x, y, degrees);
          best = g_steal_pointer (&mask);
        }
      pp_outline_unref (lie.outline);
    }
  if (best != NULL)
    pp_bits_add (taken, best, best_x, best_y);
  return best != NULL;
}

static PpBits *
page_bits_new (const Page *page)
{
  return pp_bits_new ((int) floor ((page->width + PP_PACK_GAP) / page->step),
                      (int) floor ((page->height + PP_PACK_GAP) / page->step));
}

guint
pp_pack (PpPacked *items,
         guint     n_items,
         double    width,
         double    height)
{
  const Page page = { width, height, fmax (STEP, fmax (width, height) / MOST_SQUARES) };
  g_autoptr (PpBits) taken = page_bits_new (&page);
  gboolean is_empty = TRUE;
  guint n = 0;

  for (guint i = 0; i < n_items; i++)
    {
      PpPoint at;
      PpBox box = pp_outline_get_box (items[i].outline);
      const PpPoint *inside = pp_pack_find_inside (items[i].outline, box, items[i].label, &at)
                              ? &at : NULL;

      if (!try_page (&items[i], inside, &page, taken, 4))
        {
          if (!is_empty)
            {
              n++;
              is_empty = TRUE;
              g_clear_pointer (&taken, pp_bits_free);
              taken = page_bits_new (&page);
            }
          if (!try_page (&items[i], inside, &page, taken, FINE_TURNS))
            continue;
        }
      items[i].page = n;
      is_empty = FALSE;
    }
  return is_empty ? n : n + 1;
}

void
pp_packed_clear (PpPacked *items,
                 guint     n_items)
{
  for (guint i = 0; i < n_items; i++)
    g_clear_pointer (&items[i].laid, pp_outline_unref);
}
