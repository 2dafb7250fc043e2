/* settings.h: what the program keeps between runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys and their types are those of data/org.petalpane.Petalpane.gschema.xml. What was never kept,
 * or cannot be read because there is nowhere to keep it, is empty, zero or FALSE; and then the
 * program goes by itself. For the main thread.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define PP_SETTINGS_UNITS "units"
#define PP_SETTINGS_WINDOW_WIDTH "window-width"
#define PP_SETTINGS_WINDOW_HEIGHT "window-height"
#define PP_SETTINGS_WINDOW_MAXIMIZED "window-maximized"
#define PP_SETTINGS_PANEL_FOLDER "panel-folder"
#define PP_SETTINGS_EXPORT_FOLDER "export-folder"
#define PP_SETTINGS_PIECE_FOLDER "piece-folder"
#define PP_SETTINGS_PAPER "sheet-paper"
#define PP_SETTINGS_SIDEWAYS "sheet-sideways"
#define PP_SETTINGS_MONO "sheet-mono"
#define PP_SETTINGS_LEFT_OUT "sheets-left-out"
#define PP_SETTINGS_MIRRORED "pattern-mirrored"
#define PP_SETTINGS_INSET "cutting-inset"
#define PP_SETTINGS_FORMAT "export-format"
#define PP_SETTINGS_BELL_OFF "bell-off"

/* (transfer full) */
char     *pp_settings_dup_text   (const char *key);
void      pp_settings_keep_text  (const char *key,
                                  const char *text);
/* (transfer full) */
char    **pp_settings_dup_list   (const char *key);
void      pp_settings_keep_list  (const char *key,
                                  const char * const *list);
gboolean  pp_settings_get_flag   (const char *key);
void      pp_settings_keep_flag  (const char *key,
                                  gboolean    flag);
int       pp_settings_get_count  (const char *key);
void      pp_settings_keep_count (const char *key,
                                  int         count);
double    pp_settings_get_figure  (const char *key);
void      pp_settings_keep_figure (const char *key,
                                   double      figure);

/* Before the program ends: what was kept is on its way to the disk by itself, and must arrive. */
void      pp_settings_finish     (void);

G_END_DECLS
