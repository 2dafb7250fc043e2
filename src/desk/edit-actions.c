/* edit-actions.c: the actions on the chosen pieces, and where they can do something.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Those that are one edit are values, listed in acts.list. What others do stands in edit-acts.c,
 * their keys in edit-keys.c. In a drag the enabled ones are found anew 60 times a second, so that
 * asks no more than a look at each chosen piece.
 */
#include "config.h"

#include "desk/edit-actions.h"

#include "desk/arrange-acts.h"
#include "desk/canvas-arrange.h"
#include "desk/clipboard.h"
#include "desk/edit-acts.h"
#include "desk/edit-keys.h"
#include "desk/fuse-acts.h"
#include "desk/pages.h"

#define TURN 15.0     /* degrees */
#define TURN_FINE 1.0

/* Defines the callback of an action that is one call with the document. */
#define DEFINE_ACTION(name, call)              \
  static void                                  \
  name##_cb (GSimpleAction *action,            \
             GVariant      *parameter,         \
             gpointer       window)            \
  {                                            \
    PpDocument *document = pp_window_get_document (window); \
                                               \
    call;                                      \
  }

DEFINE_ACTION (undo, pp_document_undo (document))
DEFINE_ACTION (redo, pp_document_redo (document))
DEFINE_ACTION (duplicate, pp_edit_acts_duplicate (document))
DEFINE_ACTION (remove, pp_edit_acts_remove (document, PP_ACT_REMOVE))
DEFINE_ACTION (select_all, pp_edit_acts_choose_all (document))
DEFINE_ACTION (choose_nothing, pp_document_choose (document, PP_CHOSEN_NOTHING, NULL))
DEFINE_ACTION (mirror, pp_edit_acts_mirror (document))
DEFINE_ACTION (space_evenly, pp_arrange_acts_space_evenly (document))
DEFINE_ACTION (mirror_across, pp_arrange_acts_mirror_across (document))
DEFINE_ACTION (swap, pp_canvas_open_swap (pp_window_get_canvas (window)); (void) document)
DEFINE_ACTION (fuse_vase, pp_fuse_acts_add_vase (document))
DEFINE_ACTION (fuse_piece, pp_fuse_acts_piece (document))
DEFINE_ACTION (stand, pp_fuse_acts_stand (document))
DEFINE_ACTION (choose_next, pp_document_choose_next (document))

static void
to_tray_cb (GSimpleAction *action,
            GVariant      *parameter,
            gpointer       window)
{
  gtk_widget_activate_action (pp_window_get_page (window), "page.to-tray", NULL);
}

static void
act_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       window)
{
  const PpActKind *act = pp_acts_find (g_action_get_name (G_ACTION (action)));

  pp_edit_acts_do (pp_window_get_document (window), act);
}

/* To the right as it is seen, also from behind. */
static void
turn (PpWindow *window,
      double    degrees)
{
  PpLook look = pp_canvas_get_look (pp_window_get_canvas (window));

  pp_edit_acts_turn (pp_window_get_document (window), look.from_behind ? -degrees : degrees);
}

static void
turn_left_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       window)
{
  turn (window, -TURN);
}

static void
turn_right_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       window)
{
  turn (window, TURN);
}

static void
turn_left_fine_cb (GSimpleAction *action,
                   GVariant      *parameter,
                   gpointer       window)
{
  turn (window, -TURN_FINE);
}

static void
turn_right_fine_cb (GSimpleAction *action,
                    GVariant      *parameter,
                    gpointer       window)
{
  turn (window, TURN_FINE);
}

/* In a drag it is the piece in hand that goes past. */
static void
go_past (PpWindow *window,
         gboolean  over)
{
  if (!pp_canvas_drag_past (pp_window_get_canvas (window), over))
    pp_arrange_acts_go_past (pp_window_get_document (window), over);
}

static void
over_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  go_past (window, TRUE);
}

static void
under_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       window)
{
  go_past (window, FALSE);
}

static void
copy_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       window)
{
  pp_clipboard_copy (window);
}

static void
cut_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       window)
{
  pp_clipboard_copy (window);
  pp_edit_acts_remove (pp_window_get_document (window), PP_ACT_CUT);
}

static void
paste_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       window)
{
  pp_clipboard_paste (window);
}

static void
stays_put_cb (GSimpleAction *action,
              GVariant      *state,
              gpointer       window)
{
  pp_edit_acts_pin (pp_window_get_document (window), g_variant_get_boolean (state));
}

static const GActionEntry entries[] = {
  { "undo", undo_cb },
  { "redo", redo_cb },
  { "cut", cut_cb },
  { "copy", copy_cb },
  { "paste", paste_cb },
  { "duplicate", duplicate_cb },
  { "remove", remove_cb },
  { "select-all", select_all_cb },
  { "choose-nothing", choose_nothing_cb },
  { "turn-left", turn_left_cb },
  { "turn-right", turn_right_cb },
  { "turn-left-fine", turn_left_fine_cb },
  { "turn-right-fine", turn_right_fine_cb },
  { "mirror", mirror_cb },
  { "over", over_cb },
  { "under", under_cb },
  { "swap", swap_cb },
  { "space-evenly", space_evenly_cb },
  { "mirror-across", mirror_across_cb },
  { "fuse-vase", fuse_vase_cb },
  { "fuse-piece", fuse_piece_cb },
  { "stand", stand_cb },
  { "choose-next", choose_next_cb },
  { "to-tray", to_tray_cb },
  { "stays-put", NULL, NULL, "false", stays_put_cb },
};

/* What the enabled actions depend on; all FALSE and 0 without a document, and all but undo and redo
 * where pieces are not to be seen. */
typedef struct
{
  gboolean      is_dry_run;
  gboolean      has_pieces; /* on the glass at all */
  PpChosen      chosen;
  PpChosenFacts pieces;
  gboolean      can_stand;  /* in a pocket */
  gboolean      can_undo;
  gboolean      can_redo;
} Facts;

static void
look_at_chosen (const PpPanel      *panel,
                const char * const *ids,
                PpChosenFacts      *facts)
{
  const char *group = NULL;
  guint lowest = 0, highest = 0;

  facts->is_group = TRUE;
  facts->all_pinned = TRUE;
  for (guint i = 0; ids[i] != NULL; i++)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, ids[i], &highest);

      if (facts->n++ == 0)
        {
          lowest = highest;
          group = placement->group;
        }
      facts->is_group &= group != NULL && g_strcmp0 (placement->group, group) == 0;
      facts->has_grouped |= placement->group != NULL;
      facts->all_pinned &= placement->pinned;
    }
  facts->can_rise = facts->n > 0 && lowest + facts->n < panel->placements->len;
  facts->can_sink = facts->n > 0 && highest >= facts->n;
}

static Facts
look (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  Facts facts = { 0 };

  if (document == NULL)
    return facts;
  facts.can_undo = pp_document_get_undo (document) != NULL;
  facts.can_redo = pp_document_get_redo (document) != NULL;
  if (g_strcmp0 (pp_window_get_page_name (window), PP_PAGE_DRY_RUN) != 0)
    return facts;
  facts.is_dry_run = TRUE;
  facts.has_pieces = pp_document_get_panel (document)->placements->len > 0;
  facts.chosen = pp_document_get_chosen (document);
  if (facts.chosen == PP_CHOSEN_PLACEMENTS)
    look_at_chosen (pp_document_get_panel (document), pp_document_get_chosen_ids (document),
                    &facts.pieces);
  facts.can_stand = pp_fuse_acts_can_stand (document);
  return facts;
}

static void
enable (PpWindow   *window,
        const char *name,
        gboolean    enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

/* Any of them chosen is enough. */
static const char * const of_pieces[] = {
  "cut", "copy", "duplicate", "turn-left", "turn-right", "turn-left-fine", "turn-right-fine",
  "mirror", "mirror-across", "stays-put", "swap",
};

static void
update (PpWindow *window)
{
  const Facts facts = look (window);
  GAction *stays_put = g_action_map_lookup_action (G_ACTION_MAP (window), "stays-put");
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  enable (window, "undo", facts.can_undo);
  enable (window, "redo", facts.can_redo);
  enable (window, "paste", facts.is_dry_run);
  enable (window, "select-all", facts.has_pieces);
  enable (window, "choose-nothing", facts.chosen != PP_CHOSEN_NOTHING);
  enable (window, "remove", facts.pieces.n > 0 || facts.chosen == PP_CHOSEN_HOLE
                            || facts.chosen == PP_CHOSEN_WIRE || facts.chosen == PP_CHOSEN_FUSED);
  for (guint i = 0; i < G_N_ELEMENTS (of_pieces); i++)
    enable (window, of_pieces[i], facts.pieces.n > 0);
  for (guint i = 0; i < n_acts; i++)
    enable (window, acts[i]->name, facts.pieces.n > 0 && acts[i]->can (&facts.pieces));
  enable (window, "over", facts.pieces.n == 1 && facts.pieces.can_rise);
  enable (window, "under", facts.pieces.n == 1 && facts.pieces.can_sink);
  enable (window, "space-evenly", facts.pieces.n > 2);
  enable (window, "fuse-vase", facts.is_dry_run);
  enable (window, "fuse-piece", facts.pieces.n == 1);
  enable (window, "stand", facts.can_stand);
  enable (window, "choose-next", facts.is_dry_run);
  enable (window, "to-tray", facts.is_dry_run);
  g_simple_action_set_state (G_SIMPLE_ACTION (stays_put),
                             g_variant_new_boolean (facts.pieces.n > 0 && facts.pieces.all_pinned));
}

static void
changed_cb (PpDocument *document,
            PpWindow   *window)
{
  update (window);
}

static void
page_cb (PpWindow   *window,
         GParamSpec *pspec,
         gpointer    data)
{
  update (window);
}

static void
add_actions (PpWindow *window)
{
  guint n_acts;
  const PpActKind * const *acts = pp_acts (&n_acts);

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  for (guint i = 0; i < n_acts; i++)
    {
      const GActionEntry entry = { acts[i]->name, act_cb };

      g_action_map_add_action_entries (G_ACTION_MAP (window), &entry, 1, window);
    }
}

void
pp_edit_actions_add (PpWindow *window)
{
  GSignalGroup *signals = g_signal_group_new (PP_TYPE_DOCUMENT);

  add_actions (window);
  g_signal_group_connect (signals, "changed", G_CALLBACK (changed_cb), window);
  g_signal_group_connect (signals, "chosen", G_CALLBACK (changed_cb), window);
  g_object_bind_property (window, "document", signals, "target", G_BINDING_SYNC_CREATE);
  g_object_set_data_full (G_OBJECT (window), "pp-edit-signals", signals, g_object_unref);
  g_signal_connect (window, "notify::document", G_CALLBACK (page_cb), NULL);
  g_signal_connect (window, "notify::page-name", G_CALLBACK (page_cb), NULL);
  update (window);
  pp_edit_keys_add (window);
}

void
pp_edit_actions_set_keys (GtkApplication *application)
{
  pp_edit_keys_set (application);
}
