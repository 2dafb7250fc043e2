/* fold.c: the button over what is folded away: "More".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/fold.h"

#include "panel/i18n.h"

struct _PpFold
{
  GtkToggleButton parent_instance;
};

G_DEFINE_FINAL_TYPE (PpFold, pp_fold, GTK_TYPE_TOGGLE_BUTTON)

static void
tell (PpFold *self)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED,
                               gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self)), -1);
}

static void
pp_fold_toggled (GtkToggleButton *button)
{
  tell (PP_FOLD (button));
}

static void
pp_fold_class_init (PpFoldClass *klass)
{
  GTK_TOGGLE_BUTTON_CLASS (klass)->toggled = pp_fold_toggled;
}

static void
pp_fold_init (PpFold *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *arrow = g_object_new (GTK_TYPE_IMAGE, "icon-name", "pan-end-symbolic",
                                   "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);

  gtk_box_append (GTK_BOX (box), arrow);
  gtk_box_append (GTK_BOX (box), gtk_label_new (_("More")));
  gtk_button_set_child (GTK_BUTTON (self), box);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_START);
  gtk_widget_add_css_class (GTK_WIDGET (self), "pp-fold");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("More"),
                                  -1);
  tell (self);
}
