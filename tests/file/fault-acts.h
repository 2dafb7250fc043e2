/* fault-acts.h: all that the program writes for good, each as one act; and three who do it badly.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  const char *name;
  /* Puts into the folder what is there before; what the act needs of it, or NULL. file: (out)
   * (transfer full), the name of what is written. */
  gpointer  (*prepare) (const char *folder, char **file);
  gboolean  (*act)     (const char *folder, gpointer prepared, GError **error);
  void      (*let_go)  (gpointer prepared); /* nullable */
  gboolean    is_torn_by_kill;    /* so careless that a kill alone spoils the file */
  gboolean    is_careless;        /* a power cut may spoil the file, or lose what was called saved */
} FaultAct;

extern const FaultAct fault_acts[];
extern const guint n_fault_acts;
