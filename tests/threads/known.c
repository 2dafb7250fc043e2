/* known.c: tells the thread sanitizer what GLib does, as GLib is not built with it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GLib's locks, counters and pools order what threads do, but the sanitizer sees none of it and would
 * call every hand-over a race. Each function here stands before GLib's, does the same by it, and says
 * what came before what. Only those that the core uses are here; one that is missing shows as a race.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <glib.h>

void __tsan_acquire (void *address);
void __tsan_release (void *address);

#define REAL(name) ((__typeof__ (&name)) dlsym (RTLD_NEXT, #name))

#undef g_mutex_lock
#undef g_mutex_unlock
#undef g_cond_wait
#undef g_atomic_ref_count_dec
#undef g_atomic_rc_box_release
#undef g_atomic_rc_box_release_full

void
g_mutex_lock (GMutex *mutex)
{
  REAL (g_mutex_lock) (mutex);
  __tsan_acquire (mutex);
}

void
g_mutex_unlock (GMutex *mutex)
{
  __tsan_release (mutex);
  REAL (g_mutex_unlock) (mutex);
}

void
g_cond_wait (GCond  *cond,
             GMutex *mutex)
{
  __tsan_release (mutex);
  REAL (g_cond_wait) (cond, mutex);
  __tsan_acquire (mutex);
}

gboolean
(g_atomic_ref_count_dec) (gatomicrefcount *count)
{
  gboolean is_last;

  __tsan_release (count);
  is_last = REAL (g_atomic_ref_count_dec) (count);
  if (is_last)
    __tsan_acquire (count);
  return is_last;
}

/* The last to let go sees what all others did; clearing one may let go of others. */
static __thread GDestroyNotify clear;

static void
clear_seen (gpointer box)
{
  GDestroyNotify own = clear;

  __tsan_acquire (box);
  if (own != NULL)
    own (box);
}

void
g_atomic_rc_box_release_full (gpointer       box,
                              GDestroyNotify clear_func)
{
  GDestroyNotify outer = clear;

  __tsan_release (box);
  clear = clear_func;
  REAL (g_atomic_rc_box_release_full) (box, clear_seen);
  clear = outer;
}

void
g_atomic_rc_box_release (gpointer box)
{
  g_atomic_rc_box_release_full (box, NULL);
}

#define DEFINE_UNREF(function, type)                                                               \
  void function (type *self)                                                                       \
  {                                                                                                \
    __tsan_release (self);                                                                         \
    __tsan_acquire (self);                                                                         \
    REAL (function) (self);                                                                        \
  }

DEFINE_UNREF (g_bytes_unref, GBytes)
DEFINE_UNREF (g_ptr_array_unref, GPtrArray)
DEFINE_UNREF (g_array_unref, GArray)
DEFINE_UNREF (g_hash_table_unref, GHashTable)

/* A pool with what it calls. */
typedef struct
{
  GFunc    func;
  gpointer data;
} Pool;

static Pool pool; /* one at a time */

static void
work (gpointer item,
      gpointer data)
{
  Pool *self = data;

  __tsan_acquire (self);
  self->func (item, self->data);
  __tsan_release (self);
}

GThreadPool *
g_thread_pool_new (GFunc     func,
                   gpointer  data,
                   int       max_threads,
                   gboolean  exclusive,
                   GError  **error)
{
  pool = (Pool) { func, data };
  return REAL (g_thread_pool_new) (work, &pool, max_threads, exclusive, error);
}

gboolean
g_thread_pool_push (GThreadPool *self,
                    gpointer     item,
                    GError     **error)
{
  __tsan_release (&pool);
  return REAL (g_thread_pool_push) (self, item, error);
}

void
g_thread_pool_free (GThreadPool *self,
                    gboolean     immediate,
                    gboolean     wait)
{
  REAL (g_thread_pool_free) (self, immediate, wait);
  __tsan_acquire (&pool);
}
