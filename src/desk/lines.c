/* lines.c: sentences one under the other in a box.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/lines.h"

#define CHARS 46 /* of a line that can be read without following it by finger */

void
pp_lines_add (GtkBox     *box,
              const char *words)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), CHARS);
  gtk_box_append (box, label);
}

void
pp_lines_clear (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}
