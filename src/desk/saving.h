/* saving.h: panels written to their files.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/window.h"

G_BEGIN_DECLS

/* Writes the panel of this moment to its file, or where there is none, or with `elsewhere`, to one
 * the maker chooses. All that there is to ask and to tell on the way is asked and told. */
void     pp_saving_run_async  (PpWindow            *window,
                               gboolean             elsewhere,
                               GAsyncReadyCallback  done,
                               gpointer             data);
/* TRUE once the panel is written; FALSE if the maker thought better of it. */
gboolean pp_saving_run_finish (GAsyncResult        *result);
/* Calls back when the window is not saving, at once or later. */
void     pp_saving_wait_async (PpWindow            *window,
                               GAsyncReadyCallback  done,
                               gpointer             data);

G_END_DECLS
