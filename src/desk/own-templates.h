/* own-templates.h: the maker's own templates: panels to begin others from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Panel files in a folder of the user's data, each named as the panel in it. Small files on the
 * maker's own disk, so nothing here has a thread. Errors, each one calm sentence: PP_FILE_ERROR,
 * G_IO_ERROR.
 */
#pragma once

#include "panel/panel.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* The files (GFile) by name, damaged ones too; empty where there are none. (transfer full) */
GPtrArray *pp_own_templates_list       (void);
/* Another string once there is another file, or another content of one. (transfer full) */
char      *pp_own_templates_get_state  (void);

/* Keeps the layout under `name`: with nothing glued, knotted or drilled, and undated. FALSE and an
 * error also where there is a template of that name. */
gboolean   pp_own_templates_keep       (const PpPanel  *panel,
                                        const char     *name,
                                        GError        **error);
/* Likewise. */
gboolean   pp_own_templates_rename     (GFile          *file,
                                        const char     *name,
                                        GError        **error);
/* Into the wastebasket; FALSE where there is none. */
gboolean   pp_own_templates_put_away   (GFile          *file);
/* For good. */
gboolean   pp_own_templates_delete     (GFile          *file,
                                        GError        **error);

G_END_DECLS
