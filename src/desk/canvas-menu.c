/* canvas-menu.c: what can be done with what is chosen, beside it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every act in it has a key of its own, which the menu shows; it is there to be found.
 */
#include "config.h"

#include "desk/canvas-private.h"
#include "panel/i18n.h"

typedef struct
{
  const char *label;
  const char *action;
} Row;

static const Row turn_rows[] = {
  { N_("Turn left"), "win.turn-left" },
  { N_("Turn right"), "win.turn-right" },
  { N_("Mirror"), "win.mirror" },
  { NULL },
};

static const Row stack_rows[] = {
  { N_("Lift"), "win.lift" },
  { N_("Lower"), "win.lower" },
  { N_("To the top"), "win.to-top" },
  { N_("To the bottom"), "win.to-bottom" },
  { NULL },
};

static const Row group_rows[] = {
  { N_("Group"), "win.group" },
  { N_("Ungroup"), "win.ungroup" },
  { N_("Stays put"), "win.stays-put" },
  { NULL },
};

static const Row glass_rows[] = {
  { N_("Fuse a vase on"), "win.fuse-vase" },
  { NULL },
};

static const Row fuse_rows[] = {
  { N_("Stand in the pocket"), "win.stand" },
  { N_("Fuse onto the glass"), "win.fuse-piece" },
  { NULL },
};

static const Row change_rows[] = {
  { N_("Cut"), "win.cut" },
  { N_("Copy"), "win.copy" },
  { N_("Paste"), "win.paste" },
  { N_("Duplicate"), "win.duplicate" },
  { N_("Take off the glass"), "win.remove" },
  { NULL },
};

static void
add_section (GMenu     *menu,
             const Row *rows)
{
  g_autoptr (GMenu) section = g_menu_new ();

  for (; rows->label != NULL; rows++)
    g_menu_append (section, _(rows->label), rows->action);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
}

static GMenu *
make_menu (PpCanvas *self)
{
  GMenu *menu = g_menu_new ();

  if (pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS)
    {
      add_section (menu, turn_rows);
      add_section (menu, stack_rows);
      add_section (menu, group_rows);
      add_section (menu, fuse_rows);
    }
  else
    add_section (menu, glass_rows);
  add_section (menu, change_rows);
  return menu;
}

static gboolean
drop_cb (gpointer data)
{
  PpCanvas *self = data;

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_object_unref (self);
  return G_SOURCE_REMOVE;
}

/* The action that was chosen is done after this signal, and needs the menu's place in the tree. */
static void
closed_cb (GtkPopover *menu,
           PpCanvas   *self)
{
  g_idle_add (drop_cb, g_object_ref (self));
}

void
pp_canvas_open_menu (PpCanvas *self,
                     PpPoint   px)
{
  g_autoptr (GMenu) menu = NULL;

  if (self->document == NULL || self->menu != NULL)
    return;
  menu = make_menu (self);
  self->menu = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu),
                               &(GdkRectangle) { (int) px.x, (int) px.y, 1, 1 });
  g_signal_connect (self->menu, "closed", G_CALLBACK (closed_cb), self);
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

/* Beside what is chosen, else in the middle. */
void
pp_canvas_open_menu_by_key (PpCanvas *self)
{
  GdkRectangle box;
  PpPoint px = { gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
                 gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 };

  if (pp_canvas_get_chosen_box (self, &box))
    px = (PpPoint) { box.x + box.width / 2.0, box.y + box.height / 2.0 };
  pp_canvas_open_menu (self, px);
}
