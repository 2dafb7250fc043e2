/* typing.c: what is typed in a field and not taken yet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/typing.h"

#include "desk/figure-entry.h"
#include "desk/text-entry.h"

void
pp_typing_finish (GtkRoot *root)
{
  GtkWidget *focus, *figure, *words;

  g_return_if_fail (GTK_IS_ROOT (root));

  focus = gtk_root_get_focus (root);
  if (focus == NULL)
    return;
  figure = gtk_widget_get_ancestor (focus, PP_TYPE_FIGURE_ENTRY);
  words = gtk_widget_get_ancestor (focus, PP_TYPE_TEXT_ENTRY);
  if (figure != NULL)
    pp_figure_entry_commit (PP_FIGURE_ENTRY (figure));
  if (words != NULL)
    pp_text_entry_commit (PP_TEXT_ENTRY (words));
}
