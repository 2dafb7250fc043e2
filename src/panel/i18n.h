/* i18n.h: marking of text for translation, the same in library and program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>

G_BEGIN_DECLS

/* Puts the maker's locale in force; what is marked comes from then on in its language. The folder
 * of translations is the one the program is installed with, or what the environment's PP_LOCALE_DIR
 * names: a build that is not installed has them in its `po`. Before any thread and any text. */
void pp_i18n_bind (void);

G_END_DECLS
