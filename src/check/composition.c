/* composition.c: groups of flowers, weight for the eye, height over the vase, overhang.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/composition.h"

#include "check/near.h"
#include "check/overhang.h"
#include "panel/tolerance.h"
#include "shape/polygon.h"

/* The root, and the group, of what is no member of any. */
#define NONE G_MAXUINT

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

/* What of a body it goes by whether it is in a group: asked again and again, so beside each
 * other. */
typedef struct
{
  const char *group; /* NULL: in none by name */
  gboolean    is_flower;
} Trait;

static gboolean
is_lone_flower (const Trait *trait)
{
  return trait->group == NULL && trait->is_flower;
}

/* Whether it is in a group, if by itself. */
static gboolean
is_member (const Trait *trait)
{
  return trait->group != NULL || trait->is_flower;
}

/* The composition in the making, and that of the scene before. */
typedef struct
{
  PpComposition       *now;
  const PpScene       *scene;
  const PpComposition *previous; /* NULL: nothing of it holds */
  const PpScene       *before;
  guint                asked;    /* of the previous, so far */
  Trait               *traits;   /* of each body */
} Composing;

/* (transfer full) */
static Trait *
find_traits (const PpScene *scene)
{
  Trait *traits = g_new (Trait, scene->n_bodies + 1);

  for (guint i = 0; i < scene->n_bodies; i++)
    traits[i] = (Trait) { scene->bodies[i]->placement->group,
                          scene->bodies[i]->piece->kind == PP_KIND_FLOWER };
  return traits;
}

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

/* Those in a named group, each with the first of its group so far: lone flowers are in none. */
static void
join_named (const Composing *self,
            guint           *root)
{
  g_autoptr (GHashTable) first = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      const char *group = self->traits[i].group;
      gpointer other;

      if (group == NULL)
        continue;
      if (g_hash_table_lookup_extended (first, group, NULL, &other))
        join (root, GPOINTER_TO_UINT (other), i);
      else
        g_hash_table_insert (first, (gpointer) group, GUINT_TO_POINTER (i));
    }
}

/* Whether boxes meet, without a branch that would be guessed wrong again and again. */
static inline gboolean
meets_at_once (const PpBox *a,
               const PpBox *b)
{
  return (a->x0 <= b->x1) & (b->x0 <= a->x1) & (a->y0 <= b->y1) & (b->y0 <= a->y1);
}

/* Lone flowers, each with those before it that are near enough. */
static void
join_lone (Composing *self,
           guint     *root)
{
  const PpScene *scene = self->scene;
  double reach = pp_panel_get_limit (scene->panel, PP_LIMIT_GROUP) + PP_TIE;
  g_autofree guint *flowers = g_new (guint, scene->n_bodies + 1);
  g_autofree PpBox *boxes = g_new (PpBox, scene->n_bodies + 1); /* of them */
  guint n = 0;

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      PpBox box;

      if (!is_lone_flower (&self->traits[i]))
        continue;
      box = pp_box_grow (scene->bodies[i]->box, reach);
      for (guint k = 0; k < n; k++)
        if (meets_at_once (&boxes[k], &box) && find_root (root, flowers[k]) != find_root (root, i)
            && are_near (self, i, flowers[k], reach))
          join (root, i, flowers[k]);
      boxes[n] = scene->bodies[i]->box;
      flowers[n++] = i;
    }
}

/* (transfer full), n_bodies long, NONE for what is no member of any. */
static guint *
find_roots (Composing *self)
{
  guint n = self->scene->n_bodies, *root = g_new (guint, n + 1);

  for (guint i = 0; i < n; i++)
    root[i] = is_member (&self->traits[i]) ? i : NONE;
  join_named (self, root);
  join_lone (self, root);
  return root;
}

/* A group begins with the member that its chains lead to, the least of it. */
static void
count_members (const Composing *self,
               const guint     *root,
               GArray          *groups,
               guint           *group_of)
{
  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      PpGroup begun = { 0 }, *group;
      guint first;

      group_of[i] = NONE;
      if (root[i] == NONE)
        continue;
      begun.name = self->traits[i].group;
      first = find_root (root, i);
      group_of[i] = first == i ? groups->len : group_of[first];
      if (group_of[i] == groups->len)
        g_array_append_val (groups, begun);
      group = &g_array_index (groups, PpGroup, group_of[i]);
      group->n_members++;
      group->flowers += self->traits[i].is_flower;
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

  count_members (composing, root, groups, group_of);
  self->n_groups = groups->len;
  self->groups = (PpGroup *) (gpointer) g_array_free (groups, FALSE);
  for (guint k = 0; k < self->n_groups; k++)
    {
      self->groups[k].members = g_new (guint, self->groups[k].n_members);
      self->groups[k].n_members = 0;
    }
  for (guint i = 0; i < scene->n_bodies; i++)
    if (group_of[i] != NONE)
      {
        PpGroup *group = &self->groups[group_of[i]];

        group->members[group->n_members++] = i;
      }
}

static gboolean
has_same_members (const Composing *self,
                  const PpGroup   *a,
                  const PpGroup   *b)
{
  if (a->n_members != b->n_members)
    return FALSE;
  for (guint i = 0; i < a->n_members; i++)
    if (a->members[i] != b->members[i] || !has_stayed (self, a->members[i]))
      return FALSE;
  return TRUE;
}

static void
compare_groups (const Composing *self)
{
  const PpComposition *now = self->now, *previous = self->previous;

  for (guint k = 0, before = 0; previous != NULL && k < now->n_groups; k++)
    {
      PpGroup *group = &now->groups[k];

      while (before < previous->n_groups
             && previous->groups[before].members[0] < group->members[0])
        before++;
      group->stays = before < previous->n_groups
                     && has_same_members (self, group, &previous->groups[before]);
    }
}

/* The two areas come by different sums: without the bounds the lesser part could be less than 0 by
 * rounding. */
static PpSpread
find_spread (const PpOutline *outline,
             double           middle)
{
  double area = pp_outline_area (outline), left = pp_outline_area_left (outline, middle);

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

PpComposition *
pp_composition_new (const PpScene       *scene,
                    const PpComposition *previous,
                    const PpScene       *before)
{
  PpComposition *self = g_new0 (PpComposition, 1);
  g_autofree Trait *traits = find_traits (scene);
  Composing composing = { self, scene, previous, before, 0, traits };

  self->asked = g_array_sized_new (FALSE, FALSE, sizeof (PpNearness),
                                   previous != NULL ? previous->asked->len + 1 : 1);
  find_groups (&composing);
  compare_groups (&composing);
  weigh_all (&composing);
  self->vase_ratio = find_vase_ratio (scene);
  self->overhang = g_new0 (double, scene->n_bodies);
  for (guint i = 0; i < scene->n_bodies; i++)
    self->overhang[i] = has_stayed (&composing, i) ? previous->overhang[i]
                                                   : pp_overhang_of (scene, scene->bodies[i]);
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
