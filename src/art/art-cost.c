/* art-cost.c: what a drawing costs once every reference in it is followed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Elements and ids are nodes of one graph. A node for an id leads to every element that bears
 * it, so that an id written twice hides nothing. Each node is summed once, depth first; a node
 * met again before it is summed closes a circle. Ten levels of ten uses are 10^10 elements but
 * only a few dozen nodes, so the sum is quick where the drawing would not be.
 */
#include "config.h"

#include "art/art-cost.h"

#include "art/art-fail.h"
#include "panel/i18n.h"

#define STOPS_PER_ELEMENT 8.0 /* a stop of a gradient costs far less than an element */

typedef enum
{
  NEW,
  OPEN,
  SUMMED,
} State;

typedef struct
{
  double     own;
  double     cost;  /* own and all below */
  double     own_scale;
  double     scale; /* greatest way down */
  State      state;
  gboolean   is_element;
  PpArtPart  part;
  GArray    *edges; /* node numbers */
} Node;

struct _PpArtCost
{
  GArray     *nodes;
  GHashTable *ids;     /* id to node number */
  GArray     *for_all; /* node numbers */
};

static void
node_clear (gpointer data)
{
  Node *node = data;

  g_array_unref (node->edges);
}

static Node *
get_node (PpArtCost *self,
          guint      number)
{
  return &g_array_index (self->nodes, Node, number);
}

static guint
add_node (PpArtCost *self)
{
  Node node = { .own_scale = 1, .edges = g_array_new (FALSE, FALSE, sizeof (guint)) };

  g_array_append_val (self->nodes, node);
  return self->nodes->len - 1;
}

static void
add_edge (PpArtCost *self,
          guint      from,
          guint      to)
{
  g_array_append_val (get_node (self, from)->edges, to);
}

static guint
get_id_node (PpArtCost  *self,
             const char *id)
{
  gpointer number;
  guint node;

  if (g_hash_table_lookup_extended (self->ids, id, NULL, &number))
    return GPOINTER_TO_UINT (number);
  node = add_node (self);
  g_hash_table_insert (self->ids, g_strdup (id), GUINT_TO_POINTER (node));
  return node;
}

PpArtCost *
pp_art_cost_new (void)
{
  PpArtCost *self = g_new0 (PpArtCost, 1);

  self->nodes = g_array_new (FALSE, FALSE, sizeof (Node));
  g_array_set_clear_func (self->nodes, node_clear);
  self->ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->for_all = g_array_new (FALSE, FALSE, sizeof (guint));
  return self;
}

void
pp_art_cost_free (PpArtCost *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->nodes);
  g_hash_table_unref (self->ids);
  g_array_unref (self->for_all);
  g_free (self);
}

guint
pp_art_cost_add (PpArtCost *self,
                 guint      parent,
                 PpArtPart  part)
{
  guint element = add_node (self);
  Node *node = get_node (self, element);

  node->own = part == PP_ART_GRADIENT ? 1 / STOPS_PER_ELEMENT : 1;
  node->is_element = TRUE;
  node->part = part;
  if (parent != PP_ART_NO_PARENT)
    add_edge (self, parent, element);
  return element;
}

void
pp_art_cost_weigh (PpArtCost *self,
                   guint      element,
                   double     cost)
{
  get_node (self, element)->own += cost;
}

void
pp_art_cost_enlarge (PpArtCost *self,
                     guint      element,
                     double     scale)
{
  get_node (self, element)->own_scale *= scale;
}

void
pp_art_cost_weigh_all (PpArtCost *self,
                       double     cost)
{
  for (guint i = 0; i < self->nodes->len; i++)
    if (get_node (self, i)->is_element)
      get_node (self, i)->own += cost;
}

void
pp_art_cost_name (PpArtCost  *self,
                  guint       element,
                  const char *id)
{
  add_edge (self, get_id_node (self, id), element);
}

void
pp_art_cost_refer (PpArtCost  *self,
                   guint       element,
                   const char *id)
{
  add_edge (self, element, get_id_node (self, id));
}

void
pp_art_cost_refer_by_all (PpArtCost  *self,
                          const char *id)
{
  guint node = get_id_node (self, id);

  g_array_append_val (self->for_all, node);
}

static gboolean
is_within_limits (const Node  *node,
                  GError     **error)
{
  if (node->cost > PP_ART_MAX_COST)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing has too many parts to be drawn quickly."));
  if (node->scale > PP_ART_MAX_SCALE)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing enlarges its parts too much."));
  return TRUE;
}

/* `above` counts the nodes that are open: a long chain of uses must not end the stack here. (In the
 * library it cannot: each link is counted again in all before it, and that is too much long
 * before.) */
static gboolean
sum (PpArtCost  *self,
     guint       number,
     guint       above,
     GError    **error)
{
  Node *node = get_node (self, number);

  if (node->state == SUMMED)
    return TRUE;
  if (node->state == OPEN)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                        _("The drawing refers to itself in a circle."));
  if (above > PP_ART_MAX_CHAIN)
    return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH, _("The drawing is nested too deeply."));
  node->state = OPEN;
  node->cost = node->own;
  node->scale = 1;
  for (guint i = 0; i < node->edges->len; i++)
    {
      guint below = g_array_index (node->edges, guint, i);

      if (!sum (self, below, above + 1, error))
        return FALSE;
      node->cost += get_node (self, below)->cost;
      node->scale = MAX (node->scale, get_node (self, below)->scale);
    }
  node->scale *= node->own_scale;
  node->cost *= node->own_scale;
  node->state = SUMMED;
  return is_within_limits (node, error);
}

static gboolean
sum_all (PpArtCost  *self,
         GError    **error)
{
  for (guint i = 0; i < self->nodes->len; i++)
    get_node (self, i)->state = NEW;
  for (guint i = 0; i < self->nodes->len; i++)
    if (!sum (self, i, 0, error))
      return FALSE;
  return TRUE;
}

static gboolean
check_style_sheets (PpArtCost  *self,
                    GError    **error)
{
  for (guint i = 0; i < self->for_all->len; i++)
    {
      const GArray *named = get_node (self, g_array_index (self->for_all, guint, i))->edges;

      for (guint k = 0; k < named->len; k++)
        if (get_node (self, g_array_index (named, guint, k))->part == PP_ART_DRAWN)
          return pp_art_fail (error, PP_ART_ERROR_TOO_MUCH,
                              _("The drawing's style sheet refers to more than colours."));
    }
  return TRUE;
}

/* The most that fill and line of one element can cost. Elements within a pattern may be filled
 * with the next pattern and so on, but never with one they are within: at worst all patterns
 * multiply. */
static double
get_dearest_paint (PpArtCost *self)
{
  double gradient = 0;
  double patterns = 0;

  for (guint i = 0; i < self->nodes->len; i++)
    {
      const Node *node = get_node (self, i);

      if (node->part == PP_ART_GRADIENT)
        gradient = MAX (gradient, node->cost);
      else if (node->part == PP_ART_PATTERN)
        patterns = MAX (patterns, 1) * 2 * node->cost;
    }
  return 2 * MAX (gradient, 1) * MAX (patterns, 1) - 2;
}

gboolean
pp_art_cost_is_allowed (PpArtCost  *self,
                        GError    **error)
{
  double paint;

  if (!check_style_sheets (self, error) || !sum_all (self, error))
    return FALSE;
  paint = get_dearest_paint (self);
  for (guint i = 0; i < self->nodes->len; i++)
    if (get_node (self, i)->is_element && get_node (self, i)->part == PP_ART_DRAWN)
      get_node (self, i)->own += paint;
  return sum_all (self, error);
}
