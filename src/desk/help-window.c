/* help-window.c: how the work goes, on one calm page.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said here is what the window does not say at the spot, in the order of the work.
 */
#include "config.h"

#include "desk/help-window.h"

#include "panel/i18n.h"

#define WIDTH 720 /* px, until the maker makes it another */
#define HEIGHT 760
#define LINE_CHARS 64
#define MOST_PARAGRAPHS 3

typedef struct
{
  const char *title;
  const char *paragraphs[MOST_PARAGRAPHS];
} Topic;

static const Topic topics[] = {
  { N_("Begin"),
    { N_("Say whether the panel goes on a wall or in a window, choose the glass and put it on the "
         "bench. It has two holes and a wire already; both can be moved."),
      N_("A panel you have made can begin another: Another like this, Fit to another size and Keep "
         "as a template are in the menu, and beside the panels on the first page.") } },
  { N_("Lay it out dry"),
    { N_("Drag pieces from the tray at the foot onto the glass. A piece that is chosen can be moved, "
         "turned, mirrored, lifted and lowered; its card beside it takes figures in inches or "
         "millimetres, such as 8 1/2 or 216 mm."),
      N_("The slider under the glass walks you past the panel, and From behind turns it over. Undo "
         "takes back every act, one by one.") } },
  { N_("What the numbers on the glass say"),
    { N_("Each number is something to look at: a triangle is a fault that should not be glued, a "
         "diamond asks you to look again, a circle is a note. The sentence in the margin says what, "
         "where and what would help."),
      N_("Put right does the smallest thing that helps. Put all right looks for a better panel and "
         "shows it before anything is changed. I know keeps a sentence quiet for this panel.") } },
  { N_("Pieces of your own"),
    { N_("The + at the end of the tray makes a new piece: like another one, from a few measures, "
         "from a printed ring sheet, from a drawing or from a photo. The box beside it holds all the "
         "pieces you have, for every panel."),
      N_("Where a weight or a height is not known, leave it empty: it is estimated, and what rests "
         "on an estimate says so.") } },
  { N_("Drill and hang"),
    { N_("The Hanging page shows the panel as it will hang and where the hook goes. Where to drill "
         "finds the safest pair of holes that the flowers hide."),
      N_("Glass is drilled wet, with eye protection, clamped over a soft support. Heed the rating of "
         "the hook, and check wire and hook each year. Glass over a public place needs a qualified "
         "person and the local code.") } },
  { N_("Glue it"),
    { N_("The Glue-up page has the order of the pieces, parted into mixes that you can place before "
         "the glue sets. Drag a step where you would rather have it; where that cannot be, it says "
         "which piece forbids it."),
      N_("At the bench one piece at a time fills the screen, to be read from a step away. Space is "
         "the large button. One minute before a mix is past a bell rings and the clock flashes; the "
         "bell can be turned off there. What you have placed is on the disk at once."),
      N_("Epoxy wants gloves, fresh air and no contact with the skin, and a large mix grows hot. "
         "The data sheet of your glue comes before anything said here.") } },
  { N_("Print"),
    { N_("The Sheets page shows the pages as they will print. Tick what you want; ticks and paper "
         "are remembered. The pattern is full size: measure the bar on it before you trust it."),
      N_("In place of printing, the sheets can be exported as PDF, SVG or PNG.") } },
  { N_("Nothing is lost"),
    { N_("What you do is written down as you go. After a power cut, or if the program should fail, "
         "the next start offers the panel as it was. Save puts it into its own file.") } },
};

static GtkWidget *
make_label (const char *words,
            const char *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LINE_CHARS);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
make_topic (const Topic *topic)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box), make_label (_(topic->title), "pp-keys-title"));
  for (guint i = 0; i < MOST_PARAGRAPHS && topic->paragraphs[i] != NULL; i++)
    gtk_box_append (GTK_BOX (box), make_label (_(topic->paragraphs[i]), NULL));
  return box;
}

static GtkWidget *
make_page (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 24);

  gtk_widget_set_margin_start (box, 36);
  gtk_widget_set_margin_end (box, 36);
  gtk_widget_set_margin_top (box, 24);
  gtk_widget_set_margin_bottom (box, 36);
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  for (guint i = 0; i < G_N_ELEMENTS (topics); i++)
    gtk_box_append (GTK_BOX (box), make_topic (&topics[i]));
  return box;
}

static GtkWidget *
make_bar (void)
{
  GtkWidget *bar = gtk_header_bar_new ();
  GtkWidget *keys = gtk_button_new_with_mnemonic (_("_Keys"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (keys), "help.keys");
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), keys);
  return bar;
}

/* The keys are those of the window that the help was asked for in. */
static void
keys_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GtkWindow *parent = gtk_window_get_transient_for (data);

  gtk_window_destroy (data);
  g_action_group_activate_action (G_ACTION_GROUP (parent), "show-help-overlay", NULL);
}

static void
add_actions (GtkWidget *window)
{
  static const GActionEntry entries[] = { { "keys", keys_cb } };
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  GtkShortcut *escape = gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                          gtk_named_action_new ("window.close"));

  g_action_map_add_action_entries (G_ACTION_MAP (group), entries, G_N_ELEMENTS (entries), window);
  gtk_widget_insert_action_group (window, "help", G_ACTION_GROUP (group));
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys), escape);
  gtk_widget_add_controller (window, keys);
}

GtkWidget *
pp_help_window_new (GtkWindow *parent)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_window_set_title (GTK_WINDOW (window), _("Help"));
  gtk_window_set_titlebar (GTK_WINDOW (window), make_bar ());
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_widget_add_css_class (window, "petalpane");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), make_page ());
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  gtk_window_set_focus (GTK_WINDOW (window), scrolled);
  add_actions (window);
  return window;
}
