/* export-job.h: an export as it goes on: what is drawn, in a thread, and then where it is written.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawing comes first, so that it is known what would be replaced before anything is written.
 */
#pragma once

#include "desk/window.h"
#include "desk/work.h"
#include "sheet/sheet.h"

G_BEGIN_DECLS

/* Draws the files of an export; in a thread, reporting to `work`. Their names are those in the
 * chosen folder. `data` is what was handed to pp_export_job_run(). GPtrArray of PpSheetFile
 * (transfer full), or NULL. */
typedef GPtrArray *(*PpExportFunc) (const PpPanel *panel,
                                    gpointer       data,
                                    PpWork        *work,
                                    GError       **error);

typedef struct
{
  const char     *doing;   /* "The sheets are being drawn." */
  /* "The sheets are in …", `file` (nullable) being the one file: (transfer full) */
  char         *(*tell) (const char *file, const char *folder);
  PpExportFunc    draw;
  gpointer        data;    /* freed with free_data */
  GDestroyNotify  free_data;
} PpExport;

/* Draws the panel of this moment and writes to `target`: the folder of all files, or the one file.
 * Asks before it replaces files in a folder. Strings are those of the program and stay. */
void pp_export_job_run (PpWindow       *window,
                        const PpExport *export,
                        GFile          *target,
                        gboolean        is_folder);

G_END_DECLS
