/* canvas-menu.c: what can be done with what is chosen, beside it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every act in it has a key of its own, which the menu shows; it is there to be found.
 */
#include "config.h"

#include "desk/acts.h"
#include "desk/canvas-private.h"
#include "desk/swap-chooser.h"
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
  { N_("Mirror across the middle"), "win.mirror-across" },
  { N_("Space evenly"), "win.space-evenly" },
  { NULL },
};

static const Row stack_rows[] = {
  { N_("Over the next"), "win.over" },
  { N_("Under the next"), "win.under" },
  { NULL },
};

static const Row stay_rows[] = {
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
  { N_("Swap for…"), "win.swap" },
  { N_("Cut"), "win.cut" },
  { N_("Copy"), "win.copy" },
  { N_("Paste"), "win.paste" },
  { N_("Duplicate"), "win.duplicate" },
  { N_("Take off the glass"), "win.remove" },
  { NULL },
};

static void
add_rows (GMenu     *section,
          const Row *rows)
{
  for (; rows->label != NULL; rows++)
    g_menu_append (section, _(rows->label), rows->action);
}

static void
add_acts (GMenu       *section,
          PpActSection which)
{
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  for (guint i = 0; i < n_acts; i++)
    if (acts[i]->section == which)
      {
        g_autofree char *action = g_strconcat ("win.", acts[i]->name, NULL);

        g_menu_append (section, _(acts[i]->label), action);
      }
}

static GMenu *
make_menu (PpCanvas *self)
{
  g_autoptr (GMenu) turn = g_menu_new ();
  g_autoptr (GMenu) stack = g_menu_new ();
  g_autoptr (GMenu) in_stack = g_menu_new ();
  g_autoptr (GMenu) group = g_menu_new ();
  g_autoptr (GMenu) fuse = g_menu_new ();
  g_autoptr (GMenu) change = g_menu_new ();
  GMenu *menu = g_menu_new ();

  if (pp_document_get_chosen (self->document) == PP_CHOSEN_PLACEMENTS)
    {
      add_rows (turn, turn_rows);
      add_acts (turn, PP_SECTION_TURN);
      add_rows (stack, stack_rows);
      add_acts (stack, PP_SECTION_STACK);
      g_menu_append_submenu (in_stack, _("In the stack"), G_MENU_MODEL (stack));
      add_acts (group, PP_SECTION_GROUP);
      add_rows (group, stay_rows);
      add_rows (fuse, fuse_rows);
      g_menu_append_section (menu, NULL, G_MENU_MODEL (turn));
      g_menu_append_section (menu, NULL, G_MENU_MODEL (in_stack));
      g_menu_append_section (menu, NULL, G_MENU_MODEL (group));
    }
  else
    add_rows (fuse, glass_rows);
  add_rows (change, change_rows);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (fuse));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (change));
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

/* Opens a popover (transfer floating) beside `at`, widget px; one at a time. */
static void
open_popover (PpCanvas           *self,
              GtkWidget          *popover,
              const GdkRectangle *at)
{
  g_return_if_fail (self->menu == NULL);

  self->menu = popover;
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  gtk_popover_set_pointing_to (GTK_POPOVER (popover), at);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), self);
  gtk_popover_popup (GTK_POPOVER (popover));
}

void
pp_canvas_open_menu (PpCanvas *self,
                     PpPoint   px)
{
  g_autoptr (GMenu) menu = NULL;
  GtkWidget *popover;

  if (self->document == NULL || self->menu != NULL)
    return;
  menu = make_menu (self);
  popover = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (popover), FALSE);
  gtk_widget_set_halign (popover, GTK_ALIGN_START);
  open_popover (self, popover, &(GdkRectangle) { (int) px.x, (int) px.y, 1, 1 });
}

void
pp_canvas_open_swap (PpCanvas *self)
{
  GtkWidget *chooser;
  GdkRectangle box;

  g_return_if_fail (PP_IS_CANVAS (self));

  if (self->document == NULL || self->menu != NULL
      || pp_document_get_chosen (self->document) != PP_CHOSEN_PLACEMENTS)
    return;
  if (!pp_canvas_get_chosen_box (self, &box))
    box = (GdkRectangle) { gtk_widget_get_width (GTK_WIDGET (self)) / 2,
                           gtk_widget_get_height (GTK_WIDGET (self)) / 2, 1, 1 };
  chooser = pp_swap_chooser_new (self->document);
  gtk_popover_set_position (GTK_POPOVER (chooser), GTK_POS_RIGHT);
  open_popover (self, chooser, &box);
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
