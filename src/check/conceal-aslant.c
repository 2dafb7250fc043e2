/* conceal-aslant.c: how much of the hung wire is hidden from each of 21 sides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each leg is cut into equal parts of about PART. A line of sight from a part's middle leaves the
 * front face shifted by the thickness of glass and wire, bent by Snell's law; the pieces it then
 * meets are those of midsurface.h.
 *
 * Of the check before the screens are kept of what rests as it did, and what is known of each leg
 * for as long as it hardly moves (sight-leg.h).
 */
#include "check/conceal-private.h"

#include "check/finding.h"
#include "check/sight-leg.h"
#include "shape/refraction.h"

#define PART 0.5 /* mm */
#define RADIANS (G_PI / 180)

typedef struct
{
  const PpPanel *panel;
  PpRun          run;
  GPtrArray     *screens; /* PpScreen: glass, then pieces, the flattest, soonest judged, first */
  GPtrArray     *changed; /* PpScreen: new since before, or no longer there */
  guint          n_legs;
  PpSightRow     rows[PP_MOST_LEGS]; /* the legs as they are, before a view */
  PpBox          reaches[PP_MOST_LEGS];
  double         steep;   /* mm aslant a mm of height, at most */
  double         shifted; /* mm, likewise */
  PpAslant       views[PP_N_VIEWS];
} Looking;

/* Whether it may be before the wire in any view. */
static gboolean
may_hide (const Looking      *self,
          const PpMidsurface *piece)
{
  double far = self->steep * MAX (fabs (piece->lowest), fabs (piece->highest)) + self->shifted
               + PP_TIE;

  for (guint leg = 0; leg < self->n_legs; leg++)
    if (pp_box_meets (pp_box_grow (piece->body->box, far), self->reaches[leg]))
      return TRUE;
  return FALSE;
}

/* The conceal in the making, and that of before. */
typedef struct
{
  PpConceal       *now;
  const PpSettled *settled;
  const PpConceal *previous; /* NULL: nothing of it holds */
  const PpSettled *before;
} Keeping;

/* That of the check before, if it rests as it did. (transfer full) */
static PpScreen *
take_screen (const Keeping      *self,
             guint               index,
             const PpMidsurface *piece)
{
  const PpSettled *before = self->before;

  if (self->previous != NULL && index < before->scene->n_bodies
      && before->scene->bodies[index] == piece->body && before->rests[index] == piece->rest
      && g_ptr_array_index (self->previous->pieces, index) != NULL)
    return pp_screen_ref (g_ptr_array_index (self->previous->pieces, index));
  return pp_screen_new_piece (piece);
}

static int
compare_steepest (gconstpointer a,
                  gconstpointer b)
{
  const PpMidsurface *p = &(*(PpScreen * const *) a)->piece, *q = &(*(PpScreen * const *) b)->piece;

  return p->steepest < q->steepest ? -1 : p->steepest > q->steepest;
}

static void
add_pieces (Looking       *self,
            const Keeping *keeping)
{
  const PpSettled *settled = keeping->settled;
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  PpConceal *now = keeping->now;

  now->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_screen_unref);
  g_ptr_array_set_size (now->pieces, (int) settled->scene->n_bodies);
  for (guint i = 0; i < settled->scene->n_bodies; i++)
    if (pp_conceal_counts (settled->rests, i))
      {
        PpMidsurface piece = pp_midsurface_make (settled->rests[i], settled->scene->bodies[i]);

        if (!may_hide (self, &piece))
          continue;
        now->pieces->pdata[i] = take_screen (keeping, i, &piece);
        g_ptr_array_add (pieces, now->pieces->pdata[i]);
      }
  g_ptr_array_sort (pieces, compare_steepest); /* which leaves equals in their order */
  g_ptr_array_extend (self->screens, pieces, NULL, NULL);
}

static void
add_glass (Looking       *self,
           const Keeping *keeping)
{
  const PpScene *scene = keeping->settled->scene;
  PpConceal *now = keeping->now;

  if (keeping->previous != NULL) /* of a panel on the same ground */
    now->glass = g_ptr_array_ref (keeping->previous->glass);
  else
    {
      now->glass = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_screen_unref);
      g_ptr_array_add (now->glass, pp_screen_new_glass (pp_cover_of_background (scene)));
      for (guint i = 0; i < scene->n_parts; i++)
        g_ptr_array_add (now->glass, pp_screen_new_glass (pp_cover_of_part (&scene->parts[i])));
    }
  g_ptr_array_extend (self->screens, now->glass, NULL, NULL);
}

/* Those that are not the same screens as before. */
static void
find_changed (Looking       *self,
              const Keeping *keeping)
{
  GPtrArray *now = keeping->now->pieces, *before;

  if (keeping->previous == NULL)
    return;
  before = keeping->previous->pieces;
  for (guint i = 0; i < MAX (now->len, before->len); i++)
    {
      gpointer is = i < now->len ? now->pdata[i] : NULL;
      gpointer was = i < before->len ? before->pdata[i] : NULL;

      if (is != was && is != NULL)
        g_ptr_array_add (self->changed, is);
      if (is != was && was != NULL)
        g_ptr_array_add (self->changed, was);
    }
}

static PpSightRow
row_of (const PpRun *run,
        guint        leg_index,
        double       radius,
        double       opaque)
{
  PpLeg leg = pp_run_get_leg (run, leg_index);
  guint n = (guint) fmax (1, round (leg.length / PART));

  return (PpSightRow) {
    .from = leg.from,
    .direction = leg.direction,
    .normal = leg.normal,
    .spacing = leg.length / n,
    .per_mm = leg.length > 0 ? n / leg.length : 0,
    .n = n,
    .asides = { 0, -radius, radius },
    .opaque = opaque,
  };
}

static PpPoint
slant_of (double sideways,
          double updown)
{
  return (PpPoint) { tan (sideways * RADIANS), -tan (updown * RADIANS) };
}

/* From the wire to where its sight leaves the front face. */
static PpPoint
shift_of (const PpPanel *panel,
          PpPoint        slant)
{
  const PpBackground *back = panel->background;
  double steep = hypot (slant.x, slant.y), bent, far;

  if (steep <= 0)
    return (PpPoint) { 0, 0 };
  bent = pp_refraction_shift (back->thickness, steep, back->glass.refractive_index);
  far = (panel->wire->diameter / 2 * steep + bent) / steep;
  return (PpPoint) { far * slant.x, far * slant.y };
}

static PpAslant
aslant_of (const PpPanel *panel,
           double         sideways,
           double         updown)
{
  PpPoint slant = slant_of (sideways, updown);

  return (PpAslant) { slant, shift_of (panel, slant) };
}

static void
looking_init (Looking       *self,
              const Keeping *keeping,
              const PpHang  *hang)
{
  const PpScene *scene = keeping->settled->scene;
  const PpPanel *panel = scene->panel;
  double radius = panel->wire->diameter / 2;
  PpAslant most = aslant_of (panel, panel->display->sideways, panel->display->updown);

  *self = (Looking) {
    .panel = panel,
    .run = pp_run_hung (scene, hang),
    .screens = g_ptr_array_new (),
    .changed = g_ptr_array_new (),
    .steep = pp_rough_length (most.slant.x, most.slant.y),
    .shifted = pp_rough_length (most.shift.x, most.shift.y),
  };
  for (guint k = 0; k < PP_N_VIEWS; k++)
    self->views[k] = aslant_of (panel, keeping->now->views[k].sideways,
                                keeping->now->views[k].updown);
  for (; self->n_legs < self->run.n_legs; self->n_legs++)
    {
      const PpPoint *ends = &self->run.points[self->n_legs];
      PpRun leg = { .points = { ends[0], ends[1] }, .n_legs = 1 };

      self->rows[self->n_legs] = row_of (&self->run, self->n_legs, radius,
                                         pp_panel_get_limit (panel, PP_LIMIT_OPAQUE));
      self->reaches[self->n_legs] = pp_run_get_box (&leg, radius);
    }
  add_glass (self, keeping);
  add_pieces (self, keeping);
  find_changed (self, keeping);
}

static void
looking_clear (Looking *self)
{
  g_ptr_array_unref (self->screens);
  g_ptr_array_unref (self->changed);
}

/* A wire without length is hidden, as straight on. */
static void
look_at_legs (const Looking *self,
              const Keeping *keeping)
{
  const PpSightThrough through = { self->screens, self->changed, self->views, PP_N_VIEWS };
  PpConceal *now = keeping->now;
  double length = 0, hidden[PP_N_VIEWS] = { 0 }, shares[PP_N_VIEWS];

  for (guint i = 0; i < self->n_legs; i++)
    {
      double leg = pp_run_get_leg (&self->run, i).length;

      length += leg;
      now->legs[i] = pp_sight_leg_new (&self->rows[i], &through,
                                       keeping->previous != NULL ? keeping->previous->legs[i]
                                                                 : NULL);
      pp_sight_leg_get_shares (now->legs[i], &self->rows[i], &through, shares);
      for (guint view = 0; view < PP_N_VIEWS; view++)
        hidden[view] += leg * shares[view];
    }
  for (guint view = 0; view < PP_N_VIEWS; view++)
    now->views[view].share = length > 0 ? CLAMP (hidden[view] / length, 0, 1) : 1;
}

/* The first of those within PP_TIE of the least, in the order of the views: sideways rising, in
 * each updown rising. */
static PpView
find_worst (const PpView *views)
{
  double least = INFINITY;
  guint i = 0;

  for (guint k = 0; k < PP_N_VIEWS; k++)
    least = MIN (least, views[k].share);
  while (pp_is_over (views[i].share, least))
    i++;
  return views[i];
}

void
pp_conceal_look_aslant (PpConceal       *self,
                        const PpSettled *settled,
                        const PpHang    *hang,
                        const PpConceal *previous,
                        const PpSettled *before)
{
  const PpDisplay *display = settled->scene->panel->display;
  const Keeping keeping = { self, settled, previous, before };
  Looking looking;
  PpView *view = self->views;

  for (int h = -3; h <= 3; h++)
    for (int v = -1; v <= 1; v++, view++)
      {
        /* + 0.0 makes a plain zero of the negative one. */
        view->sideways = display->sideways * h / 3 + 0.0;
        view->updown = display->updown * v + 0.0;
      }
  looking_init (&looking, &keeping, hang);
  look_at_legs (&looking, &keeping);
  looking_clear (&looking);
  self->worst = find_worst (self->views);
}
