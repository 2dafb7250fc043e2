/* composition.c: groups of flowers, weight for the eye, height over the vase, overhang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/composition.h"

#include "check/cover.h"
#include "check/near.h"
#include "panel/tolerance.h"
#include "shape/polygon.h"

/* Which group each placement is in, as the least placement of it: chains are followed up `root`,
 * which only ever points to an earlier placement or itself. */
static guint
find_root (const guint *root,
           guint        i)
{
  while (root[i] != i)
    i = root[i];
  return i;
}

static void
join (guint *root,
      guint  i,
      guint  j)
{
  guint a = find_root (root, i), b = find_root (root, j);

  root[MAX (a, b)] = MIN (a, b);
}

static gboolean
is_lone_flower (const PpBody *body)
{
  return body->placement->group == NULL && body->piece->kind == PP_KIND_FLOWER;
}

/* Whether it is in a group, if by itself. */
static gboolean
is_member (const PpBody *body)
{
  return body->placement->group != NULL || is_lone_flower (body);
}

/* The composition in the making, and that of the scene before. */
typedef struct
{
  PpComposition       *now;
  const PpScene       *scene;
  const PpComposition *previous; /* NULL: nothing of it holds */
  const PpScene       *before;
  guint                asked;    /* of the previous, so far */
} Composing;

static gboolean
has_stayed (const Composing *self,
            guint            i)
{
  return self->previous != NULL && i < self->before->n_bodies
         && self->before->bodies[i] == self->scene->bodies[i];
}

/* As the scene before has it, FALSE if it does not say. Pairs are asked for in rising order. */
static gboolean
was_near (Composing *self,
          guint      i,
          guint      j,
          gboolean  *near)
{
  if (!has_stayed (self, i) || !has_stayed (self, j))
    return FALSE;
  for (; self->asked < self->previous->asked->len; self->asked++)
    {
      const PpNearness *other = &g_array_index (self->previous->asked, PpNearness, self->asked);

      if (other->i > i || (other->i == i && other->j > j))
        return FALSE;
      *near = other->near;
      if (other->i == i && other->j == j)
        return TRUE;
    }
  return FALSE;
}

static gboolean
are_near (Composing *self,
          guint      i,
          guint      j,
          double     reach)
{
  PpNearness pair = { i, j, FALSE };

  if (!was_near (self, i, j, &pair.near))
    pair.near = pp_bodies_are_near (self->scene->bodies[i], self->scene->bodies[j], reach);
  g_array_append_val (self->now->asked, pair);
  return pair.near;
}

/* One that is held against those after it. */
typedef struct
{
  guint       index;
  const char *group; /* NULL: a lone flower */
  PpBox       reach;
} Member;

/* Whether they may belong together, told by what is soonest asked. */
static inline gboolean
may_belong (const Member *self,
            const PpBody *other)
{
  if (self->group != NULL || other->placement->group != NULL)
    return self->group != NULL && other->placement->group != NULL;
  return pp_box_meets (self->reach, other->box);
}

static gboolean
belong_together (Composing    *self,
                 guint         i,
                 const Member *earlier,
                 double        reach)
{
  const char *group = self->scene->bodies[i]->placement->group;

  return group != NULL ? g_str_equal (group, earlier->group)
                       : are_near (self, i, earlier->index, reach);
}

/* (transfer full), n_bodies long. Only members, named or lone flowers, are held against one
 * another. */
static guint *
find_roots (Composing *self)
{
  const PpScene *scene = self->scene;
  double reach = pp_panel_get_limit (scene->panel, PP_LIMIT_GROUP) + PP_TIE;
  guint *root = g_new (guint, scene->n_bodies + 1), n = 0;
  g_autofree Member *members = g_new (Member, scene->n_bodies + 1);

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];

      root[i] = i;
      if (!is_member (body))
        continue;
      for (guint k = 0; k < n; k++)
        if (may_belong (&members[k], body)
            && find_root (root, members[k].index) != find_root (root, i)
            && belong_together (self, i, &members[k], reach))
          join (root, i, members[k].index);
      members[n++] = (Member) { i, body->placement->group, pp_box_grow (body->box, reach) };
    }
  return root;
}

/* A group begins with the member that its chains lead to, the least of it. */
static void
count_members (const PpScene *scene,
               const guint   *root,
               GArray        *groups,
               guint         *group_of)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      PpGroup begun = { .name = body->placement->group }, *group;

      if (!is_member (body))
        continue;
      group_of[i] = find_root (root, i) == i ? groups->len : group_of[find_root (root, i)];
      if (group_of[i] == groups->len)
        g_array_append_val (groups, begun);
      group = &g_array_index (groups, PpGroup, group_of[i]);
      group->n_members++;
      group->flowers += body->piece->kind == PP_KIND_FLOWER;
    }
}

static void
find_groups (Composing *composing)
{
  const PpScene *scene = composing->scene;
  PpComposition *self = composing->now;
  g_autofree guint *root = find_roots (composing);
  g_autofree guint *group_of = g_new (guint, scene->n_bodies + 1);
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (PpGroup));

  count_members (scene, root, groups, group_of);
  self->n_groups = groups->len;
  self->groups = (PpGroup *) (gpointer) g_array_free (groups, FALSE);
  for (guint k = 0; k < self->n_groups; k++)
    {
      self->groups[k].members = g_new (guint, self->groups[k].n_members);
      self->groups[k].n_members = 0;
    }
  for (guint i = 0; i < scene->n_bodies; i++)
    if (is_member (scene->bodies[i]))
      {
        PpGroup *group = &self->groups[group_of[i]];

        group->members[group->n_members++] = i;
      }
}

/* The integral of min (x, middle) along dy from a to b. Round a closed ring it is the area to the
 * left of the line x = middle, exactly, as the divergence of (min (x, middle), 0) is 1 there and
 * 0 to the right. */
static double
sweep_left (PpPoint a,
            PpPoint b,
            double  middle)
{
  double left = fmin (a.x, middle) - middle, right = fmin (b.x, middle) - middle;
  double share = 1;

  if ((a.x < middle) != (b.x < middle))
    share = (a.x < middle ? middle - a.x : middle - b.x) / fabs (b.x - a.x);
  return (left + right) / 2 * share * (b.y - a.y);
}

/* How much of it lies to the left of x = middle. */
static double
area_left (const PpOutline *outline,
           double           middle)
{
  double sum = 0;

  for (guint r = 0; r < pp_outline_get_n_rings (outline); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (outline, r, &n);
      double ring = 0;

      for (guint i = 0; i + 1 < n; i++)
        ring += sweep_left (p[i], p[i + 1], middle);
      sum += r == 0 ? fabs (ring) : -fabs (ring);
    }
  return sum;
}

/* The two areas come by different sums: without the bounds the lesser part could be less than 0 by
 * rounding. */
static PpSpread
find_spread (const PpOutline *outline,
             double           middle)
{
  double area = pp_outline_area (outline), left = area_left (outline, middle);

  return (PpSpread) { area, CLAMP (left, 0, area) };
}

static void
weigh (PpComposition *self,
       PpSpread       spread,
       double         transmittance)
{
  self->left += spread.left * (1 - transmittance);
  self->right += (spread.area - spread.left) * (1 - transmittance);
}

static void
weigh_all (Composing *composing)
{
  PpComposition *self = composing->now;
  const PpScene *scene = composing->scene;
  double middle = pp_box_middle (pp_background_get_box (scene->panel->background)).x;

  for (guint i = 0; i < scene->n_parts; i++)
    weigh (self, find_spread (scene->parts[i].fused->outline, middle),
           scene->parts[i].fused->glass.transmittance);
  self->spread = g_new0 (PpSpread, scene->n_bodies);
  for (guint i = 0; i < scene->n_bodies; i++)
    {
      self->spread[i] = has_stayed (composing, i) ? composing->previous->spread[i]
                                                  : find_spread (scene->bodies[i]->outline, middle);
      weigh (self, self->spread[i], scene->bodies[i]->piece->transmittance);
    }
}

static const PpPart *
find_vase (const PpScene *scene)
{
  for (guint i = 0; i < scene->n_parts; i++)
    if (scene->parts[i].fused->role == PP_ROLE_VASE)
      return &scene->parts[i];
  return NULL;
}

static double
find_vase_ratio (const PpScene *scene)
{
  const PpPart *vase = find_vase (scene);
  double top = INFINITY;
  PpBox box;

  for (guint i = 0; i < scene->n_bodies; i++)
    if (scene->bodies[i]->piece->kind == PP_KIND_FLOWER
        || scene->bodies[i]->piece->kind == PP_KIND_BUD)
      top = fmin (top, scene->bodies[i]->box.y0);
  if (vase == NULL || isinf (top))
    return NAN;
  box = pp_outline_get_box (vase->fused->outline); /* of a ring with an inside: not 0 high */
  return fmax (0, (box.y0 - top) / pp_box_height (box));
}

/* A box whose corners lie on a convex background lies on it wholly. */
static gboolean
is_plainly_inside (const PpScene *scene,
                   const PpCover *background,
                   PpBox          box)
{
  return scene->panel->background->shape != PP_SHAPE_FREE
         && pp_cover_contains (background, (PpPoint) { box.x0, box.y0 })
         && pp_cover_contains (background, (PpPoint) { box.x1, box.y0 })
         && pp_cover_contains (background, (PpPoint) { box.x1, box.y1 })
         && pp_cover_contains (background, (PpPoint) { box.x0, box.y1 });
}

/* A line, and which way is beyond it. */
typedef struct
{
  PpPoint on;
  PpPoint out; /* of unit length */
} Beyond;

/* Whether a side stays as far as that from `p`, told by its box. */
static inline gboolean
is_far (PpPoint a,
        PpPoint b,
        PpPoint p,
        double  far)
{
  return MIN (a.x, b.x) - p.x >= far || p.x - MAX (a.x, b.x) >= far
         || MIN (a.y, b.y) - p.y >= far || p.y - MAX (a.y, b.y) >= far;
}

/* Beyond the side of a convex background that is nearest to `p`, less than `least` mm from it. */
static Beyond
find_beyond (const PpScene *scene,
             PpPoint        p,
             double         least)
{
  guint n;
  const PpPoint *ring = pp_outline_get_ring (scene->background_outline, 0, &n);
  PpPoint a = ring[0], b = ring[1];
  double length;

  for (guint i = 0; i + 1 < n; i++)
    {
      double distance;

      if (is_far (ring[i], ring[i + 1], p, least))
        continue;
      distance = pp_segment_distance (ring[i], ring[i + 1], p);
      if (distance >= least)
        continue;
      least = distance;
      a = ring[i];
      b = ring[i + 1];
    }
  length = pp_point_distance (a, b);
  if (pp_point_cross (a, b, pp_box_middle (pp_outline_get_box (scene->background_outline))) < 0)
    length = -length; /* the inside is where the middle is */
  return (Beyond) { a, { (b.y - a.y) / length, (a.x - b.x) / length } };
}

/* In the frame of the line, beyond being to the left of 0. */
static PpPoint
turn_beyond (PpPoint       p,
             gconstpointer data)
{
  const Beyond *beyond = data;
  double dx = p.x - beyond->on.x, dy = p.y - beyond->on.y;

  return (PpPoint) { -dx * beyond->out.x - dy * beyond->out.y,
                     dx * beyond->out.y - dy * beyond->out.x };
}

/* The farthest that was found of a piece from the background. */
typedef struct
{
  PpCover background;
  double  distance;
  PpPoint at;
  PpPoint near; /* on the background, nearest to the corner measured last */
  double  far;  /* mm from it, at most, to the corner in hand */
} Overhang;

/* Whether a side of the background comes into the box. */
static gboolean
is_crossed (const PpOutline *background,
            PpBox            box)
{
  for (guint r = 0; r < pp_outline_get_n_rings (background); r++)
    {
      guint n;
      const PpPoint *p = pp_outline_get_ring (background, r, &n);

      for (guint i = 0; i + 1 < n; i++)
        {
          PpBox side = pp_box_add_point (pp_box_add_point (pp_box_empty (), p[i]), p[i + 1]);

          if (pp_box_meets (side, box))
            return TRUE;
        }
    }
  return FALSE;
}

/* Corners on a convex background, or on one without a side near, have all between them on it. */
static gboolean
may_bridge (const PpScene *scene,
            const PpBody  *body)
{
  return scene->panel->background->shape == PP_SHAPE_FREE
         && is_crossed (scene->background_outline, body->box);
}

/* More than a tie of it lies outside. What lies beyond a side of a convex background does; often
 * that is soon enough told by its corner farthest out. */
static gboolean
has_outside (const PpScene  *scene,
             const PpBody   *body,
             const Overhang *overhang)
{
  g_autoptr (PpRegion) outside = NULL;

  if (overhang->distance > 0 && scene->panel->background->shape != PP_SHAPE_FREE)
    {
      Beyond beyond = find_beyond (scene, overhang->at, overhang->distance + PP_TIE);
      g_autoptr (PpOutline) turned = pp_outline_map (body->outline, turn_beyond, &beyond);

      if (area_left (turned, -PP_TIE) > 2 * PP_TIE)
        return TRUE;
    }
  outside = pp_region_difference (body->region, scene->background);
  return pp_region_get_area (outside) > PP_TIE;
}

static void
measure_corner (Overhang *self,
                PpPoint   p)
{
  double distance;

  if (pp_cover_contains (&self->background, p))
    return;
  distance = pp_bands_nearest (self->background.bands, p, self->far, &self->near);
  if (distance <= self->distance)
    return;
  self->distance = distance;
  self->at = p;
}

/* The corner farthest beyond the background's box, most often the farthest from the background. */
static PpPoint
guess_farthest (const PpPoint *p,
                guint          n,
                PpBox          box)
{
  double most = -INFINITY;
  PpPoint farthest = p[0];

  for (guint i = 0; i + 1 < n; i++)
    {
      double beyond = MAX (MAX (box.x0 - p[i].x, p[i].x - box.x1),
                           MAX (box.y0 - p[i].y, p[i].y - box.y1));

      if (beyond > most)
        farthest = p[i];
      most = MAX (most, beyond);
    }
  return farthest;
}

/* A corner no farther from a place on the background than the farthest so far is need not be
 * measured. */
static double
find_overhang (const PpScene *scene,
               const PpBody  *body)
{
  Overhang overhang = { .background = pp_cover_of_background (scene), .far = INFINITY,
                        .near = { INFINITY, INFINITY } };
  guint n;
  const PpPoint *p = pp_outline_get_ring (body->outline, 0, &n);

  if (is_plainly_inside (scene, &overhang.background, body->box))
    return PP_NO_OVERHANG;
  measure_corner (&overhang, guess_farthest (p, n, overhang.background.box));
  for (guint i = 0; i + 1 < n; i++)
    {
      overhang.far = pp_point_distance (p[i], overhang.near) + PP_TIE;
      if (overhang.far > overhang.distance)
        measure_corner (&overhang, p[i]);
    }
  if ((overhang.distance > 0 || may_bridge (scene, body)) && has_outside (scene, body, &overhang))
    return overhang.distance;
  return PP_NO_OVERHANG;
}

PpComposition *
pp_composition_new (const PpScene       *scene,
                    const PpComposition *previous,
                    const PpScene       *before)
{
  PpComposition *self = g_new0 (PpComposition, 1);
  Composing composing = { self, scene, previous, before, 0 };

  self->asked = g_array_new (FALSE, FALSE, sizeof (PpNearness));
  find_groups (&composing);
  weigh_all (&composing);
  self->vase_ratio = find_vase_ratio (scene);
  self->overhang = g_new0 (double, scene->n_bodies);
  for (guint i = 0; i < scene->n_bodies; i++)
    self->overhang[i] = has_stayed (&composing, i) ? previous->overhang[i]
                                                   : find_overhang (scene, scene->bodies[i]);
  return self;
}

void
pp_composition_free (PpComposition *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_groups; i++)
    g_free (self->groups[i].members);
  g_free (self->groups);
  g_free (self->overhang);
  g_free (self->spread);
  g_array_unref (self->asked);
  g_free (self);
}
