/* application.h: the program: its windows, its keys, and the look it starts with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_APPLICATION (pp_application_get_type ())
G_DECLARE_FINAL_TYPE (PpApplication, pp_application, PP, APPLICATION, GtkApplication)

PpApplication *pp_application_new (void);

G_END_DECLS
