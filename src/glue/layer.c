/* layer.c: labels of one size in slots, found by the set of jobs done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "glue/layer.h"

#define FIRST_SLOTS 256
#define NO_SLOT G_MAXUINT32

struct _PpLayer
{
  const PpModel *model;
  PpRank         rank;
  gsize          size;     /* of a slot */
  guint8        *slots;
  gboolean      *taken;
  guint32       *nexts;    /* slot with the same bucket, or the next free one */
  guint32       *heads;    /* a bucket each; as many as slots, a power of two */
  guint32        capacity;
  guint32        used;     /* slots from here on have never been taken */
  guint32        free;     /* first of those given back */
  guint          n;
};

static PpLabel *
get_slot (const PpLayer *self,
          guint32        slot)
{
  return (PpLabel *) (gpointer) (self->slots + slot * self->size);
}

static void
link_slot (PpLayer *self,
           guint32  slot)
{
  guint32 *head = &self->heads[get_slot (self, slot)->hash & (self->capacity - 1)];

  self->nexts[slot] = *head;
  *head = slot;
}

static void
link_all (PpLayer *self)
{
  for (guint32 i = 0; i < self->capacity; i++)
    self->heads[i] = NO_SLOT;
  self->free = NO_SLOT;
  for (guint32 slot = self->used; slot-- > 0;)
    if (self->taken[slot])
      link_slot (self, slot);
    else
      {
        self->nexts[slot] = self->free;
        self->free = slot;
      }
}

static void
set_capacity (PpLayer *self,
              guint32  capacity)
{
  self->capacity = capacity;
  self->slots = g_realloc_n (self->slots, capacity, self->size);
  self->taken = g_renew (gboolean, self->taken, capacity);
  self->nexts = g_renew (guint32, self->nexts, capacity);
  self->heads = g_renew (guint32, self->heads, capacity);
  link_all (self);
}

PpLayer *
pp_layer_new (const PpModel *model)
{
  PpLayer *self = g_new0 (PpLayer, 1);

  self->model = model;
  self->size = pp_label_get_size (model);
  set_capacity (self, FIRST_SLOTS);

  return self;
}

void
pp_layer_free (PpLayer *self)
{
  if (self == NULL)
    return;

  g_free (self->slots);
  g_free (self->taken);
  g_free (self->nexts);
  g_free (self->heads);
  g_free (self);
}

void
pp_layer_clear (PpLayer *self,
                PpRank   rank)
{
  self->rank = rank;
  self->n = 0;
  self->used = 0;
  link_all (self);
}

static guint32
take_slot (PpLayer *self)
{
  guint32 slot = self->free;

  if (slot != NO_SLOT)
    self->free = self->nexts[slot];
  else
    {
      if (self->used == self->capacity)
        set_capacity (self, 2 * self->capacity);
      slot = self->used++;
    }
  self->taken[slot] = TRUE;
  self->n++;

  return slot;
}

static void
give_back (PpLayer *self,
           guint32  slot)
{
  self->taken[slot] = FALSE;
  self->nexts[slot] = self->free;
  self->free = slot;
  self->n--;
}

static gboolean
is_same_set (const PpLayer *self,
             const PpLabel *a,
             const PpLabel *b)
{
  return a->hash == b->hash
         && memcmp (a->done, b->done, self->model->n_words * sizeof (guint64)) == 0;
}

void
pp_layer_add (PpLayer       *self,
              const PpLabel *label)
{
  const gboolean pairs = self->rank == PP_RANK_PAIRS;
  guint32 *link = &self->heads[label->hash & (self->capacity - 1)];

  while (*link != NO_SLOT)
    {
      const guint32 slot = *link;
      const PpLabel *other = get_slot (self, slot);

      if (!is_same_set (self, label, other))
        link = &self->nexts[slot];
      else if (pp_label_is_no_worse (other, self->model, label, pairs))
        return;
      else if (pp_label_is_no_worse (label, self->model, other, pairs))
        {
          *link = self->nexts[slot];
          give_back (self, slot);
        }
      else
        link = &self->nexts[slot];
    }

  const guint32 slot = take_slot (self);

  memcpy (get_slot (self, slot), label, self->size);
  link_slot (self, slot);
}

guint
pp_layer_count (const PpLayer *self)
{
  return self->n;
}

static int
compare_labels (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  const PpLayer *self = data;
  const PpLabel *one = get_slot (self, *(const guint32 *) a);
  const PpLabel *other = get_slot (self, *(const guint32 *) b);

  if (one->bound_end != other->bound_end)
    return one->bound_end < other->bound_end ? -1 : 1;
  if (one->bound_mixes != other->bound_mixes)
    return one->bound_mixes < other->bound_mixes ? -1 : 1;
  if (self->rank == PP_RANK_PAIRS && one->against != other->against)
    return one->against < other->against ? -1 : 1;
  if (one->estimate != other->estimate)
    return one->estimate < other->estimate ? -1 : 1;
  if (one->against != other->against)
    return one->against < other->against ? -1 : 1;

  return one->stamp < other->stamp ? -1 : one->stamp > other->stamp;
}

gboolean
pp_layer_narrow (PpLayer *self,
                 guint    most)
{
  if (self->n <= most)
    return FALSE;

  g_autofree guint32 *order = g_new (guint32, self->n);
  guint n = 0;

  for (guint32 slot = 0; slot < self->used; slot++)
    if (self->taken[slot])
      order[n++] = slot;
  g_qsort_with_data (order, (int) n, sizeof (guint32), compare_labels, self);
  for (guint i = most; i < n; i++)
    self->taken[order[i]] = FALSE;
  self->n = most;
  link_all (self);

  return TRUE;
}

PpLabel *
pp_layer_next (const PpLayer *self,
               guint         *slot)
{
  while (*slot < self->used && !self->taken[*slot])
    (*slot)++;

  return *slot < self->used ? get_slot (self, *slot) : NULL;
}
