/* record-private.h: what the records have in common; private to panel/.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* A counted record with the fields of a draft; its strings and parts are still the draft's. */
#define pp_record_copy(Type, draft) \
  ((Type *) pp_record_dup (sizeof (Type), (draft)))

static inline gpointer
pp_record_dup (gsize         size,
               gconstpointer draft)
{
  /* In brackets it is the function: the macro of that name wants to know a type. */
  return (g_atomic_rc_box_dup) (size, draft);
}

static inline void
pp_record_free_string (const char *string)
{
  g_free ((gpointer) string);
}

/* Defines prefix_ref() and prefix_unref(). */
#define PP_RECORD_REF_UNREF(Type, prefix, clear)                      \
  Type *                                                              \
  prefix##_ref (const Type *self)                                     \
  {                                                                   \
    return g_atomic_rc_box_acquire ((Type *) self);                   \
  }                                                                   \
                                                                      \
  void                                                                \
  prefix##_unref (const Type *self)                                   \
  {                                                                   \
    if (self != NULL)                                                 \
      g_atomic_rc_box_release_full ((Type *) self, clear);            \
  }
