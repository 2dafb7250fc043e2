/* advice-search.h: a search for a better panel, behind a dialog that can stop it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/advise.h"
#include "desk/window.h"
#include "desk/work.h"

G_BEGIN_DECLS

typedef struct
{
  const char     *doing;    /* what the dialog says meanwhile */
  const char     *outdated; /* what is said if the panel was changed meanwhile */
  /* In a thread. NULL where nothing is found. */
  PpAdvice     *(*find)     (const PpPanel *panel, PpWork *work, gconstpointer data);
  /* In the main thread, unless the window is gone or the panel another. `advice` (transfer full),
   * as found. */
  void          (*done)     (PpWindow *window, PpAdvice *advice, gboolean is_stopped,
                             gconstpointer data);
  gpointer        data;     /* of both; freed by `free_data` (nullable) in the main thread */
  GDestroyNotify  free_data;
} PpAdviceSearch;

/* Asks about the panel as the window has it now. `search` is copied, its words are borrowed. */
void pp_advice_search_run (PpWindow *window, const PpAdviceSearch *search);

G_END_DECLS
