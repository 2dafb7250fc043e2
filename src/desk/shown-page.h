/* shown-page.h: tells assistive technology which page of a stack is in front.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Now and whenever another comes to the front; after all its pages were added. GTK 4.8 does not
 * tell by itself that the pages behind are not to be seen. */
void pp_shown_page_tell (GtkStack *stack);

G_END_DECLS
