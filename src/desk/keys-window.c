/* keys-window.c: all the keys of the program, in groups.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys of actions are asked of the application, so that what is shown is what they do; those that
 * a widget knows by itself stand here as accelerators, two ways of one act with a space between.
 */
#include "config.h"

#include "desk/keys-window.h"

#include "desk/acts.h"
#include "desk/page-window.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"

#include <string.h>

#define WIDTH 900 /* px, until the maker makes it another */
#define HEIGHT 720

typedef struct
{
  const char *act;
  const char *first;  /* an action ("win.lift"), or keys */
  const char *second; /* the action that is its opposite, or NULL */
} Row;

static const Row panel_rows[] = {
  { N_("New panel"), "app.new" },
  { N_("Open"), "win.open" },
  { N_("Save"), "win.save" },
  { N_("Save as"), "win.save-as" },
  { N_("Another like this"), "win.again" },
  { N_("Fit to another size"), "win.fit" },
  { N_("Print the sheets"), "win.print" },
  { N_("Export the sheets"), "win.export-sheets" },
  { N_("Export a picture"), "win.export-picture" },
  { N_("Close this window"), "win.close" },
  { N_("Quit"), "app.quit" },
  { N_("Help"), "win.help" },
  { N_("These keys"), "win.show-help-overlay" },
  { NULL },
};

static const Row choose_rows[] = {
  { N_("Next part of the window"), "Tab" },
  { N_("The pages, first to last"), "<Alt>1 <Alt>4" },
  { N_("To the tray"), "win.to-tray" },
  { N_("Place a piece of the tray"), "Return" },
  { N_("Make a new piece"), "win.new-piece" },
  { N_("Change a piece of the tray"), "F2" },
  { N_("The box"), "win.box" },
  { N_("Next piece up, next piece down"), "Page_Down Page_Up" },
  { N_("Lowest piece, topmost piece"), "Home End" },
  { N_("Choose all pieces"), "win.select-all" },
  { N_("The glass, vase, holes and wire in turn"), "win.choose-next" },
  { N_("Choose nothing"), "Escape" },
  { NULL },
};

static const Row place_rows[] = {
  { N_("Nudge by 1 mm or 1/16 in"), "Left Right Up Down" },
  { N_("Nudge by 10 mm or 1/2 in"), "<Shift>Left" },
  { N_("Turn left, turn right"), "win.turn-left", "win.turn-right" },
  { N_("Turn by one degree"), "win.turn-left-fine", "win.turn-right-fine" },
  { N_("Mirror"), "win.mirror" },
  { N_("Mirror across the middle"), "win.mirror-across" },
  { N_("Space evenly"), "win.space-evenly" },
  { N_("Over the next, under the next"), "win.over", "win.under" },
  { N_("Stays put"), "win.stays-put" },
  { N_("Stand in the pocket"), "win.stand" },
  { NULL },
};

static const Row change_rows[] = {
  { N_("Undo, redo"), "win.undo", "win.redo" },
  { N_("Cut"), "win.cut" },
  { N_("Copy"), "win.copy" },
  { N_("Paste"), "win.paste" },
  { N_("Duplicate"), "win.duplicate" },
  { N_("Swap for another piece"), "win.swap" },
  { N_("Take off the glass"), "win.remove" },
  { N_("All that can be done with it"), "Menu <Shift>F10" },
  { N_("Fuse a vase on"), "win.fuse-vase" },
  { N_("Fuse a piece on"), "win.fuse-piece" },
  { N_("Put all right"), "win.put-all-right" },
  { NULL },
};

static const Row look_rows[] = {
  { N_("Larger, smaller"), "win.zoom-in", "win.zoom-out" },
  { N_("The whole glass"), "win.zoom-fit" },
  { N_("As large as it is"), "win.zoom-true" },
  { N_("Hold and drag to look elsewhere"), "space" },
  { N_("Measure"), "win.measure" },
  { N_("From behind"), "win.from-behind" },
  { N_("Heights"), "win.heights" },
  { N_("Glue"), "win.glue" },
  { N_("Groups"), "win.groups" },
  { NULL },
};

static const Row piece_rows[] = {
  { N_("Put it in the tray"), "<Control>Return" },
  { N_("Put in the tray and make another"), "<Control><Shift>Return" },
  { N_("Undo, redo while it is made"), "<Control>z <Control><Shift>z" },
  { N_("The picture larger, smaller"), "plus minus" },
  { N_("The whole picture"), "0" },
  { N_("Next piece in the picture, the one before"), "Right Left" },
  { N_("Leave a piece of the picture out"), "Delete" },
  { N_("Take a piece from the box"), "Return" },
  { N_("Close"), "Escape" },
  { NULL },
};

static const Row bench_rows[] = {
  { N_("What the large button says"), "space" },
  { N_("A step earlier, a step later"), "<Alt>Up <Alt>Down" },
  { N_("Back to the step, from a question"), "Escape" },
  { NULL },
};

static const Row sheet_rows[] = {
  { N_("Leaf through the sheets"), "Page_Down Page_Up" },
  { N_("First sheet, last sheet"), "Home End" },
  { NULL },
};

static const struct
{
  const char *title;
  const Row  *rows;
  gboolean    has_acts; /* and those of acts.list */
} groups[] = {
  { N_("Put in place"), place_rows, TRUE },
  { N_("Choose"), choose_rows },
  { N_("Change"), change_rows },
  { N_("Look"), look_rows },
  { N_("The panel"), panel_rows },
  { N_("Make a piece, and the box"), piece_rows },
  { N_("Glue-up and at the bench"), bench_rows },
  { N_("Sheets"), sheet_rows },
};

static void
add_key (GtkWidget  *keys,
         const char *accelerator)
{
  g_autofree char *text = NULL;
  GdkModifierType state;
  GtkWidget *label;
  guint value;

  if (!gtk_accelerator_parse (accelerator, &value, &state))
    return;
  text = gtk_accelerator_get_label (value, state);
  label = gtk_label_new (text);
  gtk_widget_add_css_class (label, "pp-key");
  gtk_box_append (GTK_BOX (keys), label);
}

/* The first key of an action, or all of the keys that are given themselves. */
static void
add_keys (GtkWidget      *keys,
          GtkApplication *application,
          const char     *action)
{
  g_auto (GStrv) own = NULL;

  if (action == NULL)
    return;
  if (strchr (action, '.') != NULL)
    {
      own = gtk_application_get_accels_for_action (application, action);
      if (own[0] != NULL)
        add_key (keys, own[0]);
      return;
    }
  own = g_strsplit (action, " ", -1);
  for (guint i = 0; own[i] != NULL; i++)
    add_key (keys, own[i]);
}

static void
add_row (GtkGrid        *grid,
         int             at,
         const Row      *row,
         GtkApplication *application)
{
  GtkWidget *act = gtk_label_new (_(row->act));
  GtkWidget *keys = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_label_set_xalign (GTK_LABEL (act), 0);
  gtk_label_set_wrap (GTK_LABEL (act), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (act), 24);
  gtk_widget_set_hexpand (act, TRUE);
  gtk_widget_set_halign (keys, GTK_ALIGN_END);
  gtk_widget_set_valign (keys, GTK_ALIGN_CENTER);
  add_keys (keys, application, row->first);
  add_keys (keys, application, row->second);
  gtk_grid_attach (grid, act, 0, at, 1, 1);
  gtk_grid_attach (grid, keys, 1, at, 1, 1);
}

static void
add_acts (GtkGrid        *grid,
          int             at,
          GtkApplication *application)
{
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  for (guint i = 0; i < n_acts; i++)
    {
      g_autofree char *action = g_strconcat ("win.", acts[i]->name, NULL);

      add_row (grid, at + (int) i, &(Row) { acts[i]->label, action }, application);
    }
}

static GtkWidget *
make_group (guint           group,
            GtkApplication *application)
{
  const Row *rows = groups[group].rows;
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *heading = gtk_label_new (_(groups[group].title));
  int n = 0;

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_widget_set_valign (grid, GTK_ALIGN_START);
  gtk_widget_set_hexpand (grid, TRUE);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "pp-keys-title");
  gtk_grid_attach (GTK_GRID (grid), heading, 0, 0, 2, 1);
  for (; rows[n].act != NULL; n++)
    add_row (GTK_GRID (grid), n + 1, &rows[n], application);
  if (groups[group].has_acts)
    add_acts (GTK_GRID (grid), n + 1, application);
  return grid;
}

static gboolean
is_shown (const char *action)
{
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    for (const Row *row = groups[i].rows; row->act != NULL; row++)
      if (g_str_equal (row->first, action) || g_strcmp0 (row->second, action) == 0)
        return TRUE;
  return g_str_has_prefix (action, "win.") && pp_acts_find (action + strlen ("win.")) != NULL;
}

/* An action that has keys stands here, or who adds it hears of it the first time this window is
 * opened. Pages have one row together. */
static void
check_shown (GtkApplication *application)
{
  g_auto (GStrv) actions = gtk_application_list_action_descriptions (application);

  for (guint i = 0; actions[i] != NULL; i++)
    if (!is_shown (actions[i]) && !g_str_has_prefix (actions[i], "win.page"))
      g_critical ("The keys of %s are not in the window of the keys", actions[i]);
}

static GtkWidget *
make_groups (GtkApplication *application)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkLayoutManager *layout = g_object_new (PP_TYPE_WRAP_LAYOUT, "spacing", 36, NULL);

  gtk_widget_set_layout_manager (box, layout);
  gtk_widget_set_margin_start (box, 24);
  gtk_widget_set_margin_end (box, 24);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 24);
  check_shown (application);
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    gtk_box_append (GTK_BOX (box), make_group (i, application));
  return box;
}

GtkWidget *
pp_keys_window_new (GtkWindow *parent)
{
  GtkWidget *page = make_groups (gtk_window_get_application (parent));
  GtkWidget *window = pp_page_window_new (parent, _("Keys"), page, WIDTH, HEIGHT);

  gtk_window_set_titlebar (GTK_WINDOW (window), gtk_header_bar_new ());
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  return window;
}
