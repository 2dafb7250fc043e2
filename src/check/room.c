/* room.c: memory for what is made of one placement after another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One block, as large as all that was wanted at a time so far, up to a bound. What is wanted beyond
 * it is got bit by bit; then the block grows.
 */
#include "check/room.h"

/* Sanitizers see who goes beyond what was taken only if each is got by itself; clang does not tell
 * that it is for them. */
#if defined(__SANITIZE_ADDRESS__) || defined(__clang__)
#define APART TRUE
#else
#define APART FALSE
#endif

#define ALIGNMENT 32
#define MOST_KEPT (64 << 20) /* bytes: a huge piece's are not held until the thread ends */

struct _PpRoom
{
  guint8    *block;
  gsize      size;
  gsize      taken;
  GPtrArray *beyond;
  gsize      beyond_size;
};

PpRoom *
pp_room_new (void)
{
  PpRoom *self = g_new0 (PpRoom, 1);

  self->beyond = g_ptr_array_new_with_free_func (g_free);
  return self;
}

void
pp_room_free (PpRoom *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->beyond);
  g_free (self->block);
  g_free (self);
}

gpointer
pp_room_take (PpRoom *self,
              gsize   bytes)
{
  gsize size = (bytes / ALIGNMENT + 1) * ALIGNMENT;
  gpointer taken;

  if (size <= self->size - self->taken)
    {
      taken = self->block + self->taken;
      self->taken += size;
      return taken;
    }
  taken = g_malloc (size);
  g_ptr_array_add (self->beyond, taken);
  self->beyond_size += size;
  return taken;
}

void
pp_room_clear (PpRoom *self)
{
  g_ptr_array_set_size (self->beyond, 0);
  if (self->beyond_size > 0 && self->size + self->beyond_size <= MOST_KEPT && !APART)
    {
      g_free (self->block);
      self->size += self->beyond_size;
      self->block = g_malloc (self->size);
    }
  self->beyond_size = 0;
  self->taken = 0;
}
