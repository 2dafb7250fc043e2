/* card-piece.c: the card of one piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It keeps the id of the piece that it shows: what is typed for one piece goes to that piece, even
 * if another is chosen already by the time the field is left.
 */
#include "config.h"

#include "desk/card-piece.h"

#include "desk/angle-entry.h"
#include "desk/arrange-acts.h"
#include "desk/count-entry.h"
#include "desk/drop-down.h"
#include "desk/fold.h"
#include "desk/length-entry.h"
#include "desk/placement-words.h"
#include "desk/pocket-list.h"
#include "desk/say.h"
#include "desk/template.h"
#include "desk/text-entry.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/stand.h"

#include <math.h>

/* Degrees: under half a shown step from a whole turn is a whole turn. */
#define NEARLY_ROUND 359.95
/* mm: a lower underside is not worth a word. */
#define ON_THE_GLASS 0.1
#define PACE_MS 200
#define MOST_CHARS 15 /* of what a piece would go over or under */

struct _PpCardPiece
{
  PpCardFace     parent_instance;
  GtkLabel      *name;
  GtkLabel      *state;
  PpLengthEntry *left;
  PpLengthEntry *top;
  PpAngleEntry  *turn;
  PpCountEntry  *stack;
  GtkWidget     *past;     /* asked of the shapes: not of every move of a drag */
  GtkButton     *over;
  GtkButton     *under;
  GtkWidget     *ungroup;
  PpTextEntry   *group;
  GtkWidget     *pocket_title;
  GtkDropDown   *pocket;
  char          *id;
  GPtrArray     *fused;   /* the list the drop-down was made from, referenced */
  guint          next_timer;
  gboolean       showing; /* the drop-down is being set, not chosen from */
};

G_DEFINE_FINAL_TYPE (PpCardPiece, pp_card_piece, PP_TYPE_CARD_FACE)

static const PpPanel *
get_panel (PpCardPiece *self)
{
  return pp_document_get_panel (pp_card_face_get_document (PP_CARD_FACE (self)));
}

static PpBox
get_glass (PpCardPiece *self)
{
  return pp_background_get_box (get_panel (self)->background);
}

/* What is shown, or NULL if it is gone. */
static const PpPlacement *
get_placement (PpCardPiece *self,
               guint       *index)
{
  if (self->id == NULL || pp_card_face_get_document (PP_CARD_FACE (self)) == NULL)
    return NULL;
  return pp_panel_find_placement (get_panel (self), self->id, index);
}

static void
take_pose (PpCardPiece *self,
           guint        index,
           PpPose       pose,
           const char  *figure,
           gboolean     stepped)
{
  g_autofree char *name = pp_placement_words_piece (get_panel (self), index);
  gboolean turned = pose.rotation != pp_panel_placement (get_panel (self), index)->rotation;
  g_autofree char *label = g_strdup_printf (turned ? _("Turn %s") : _("Move %s"), name);
  g_autofree char *key = g_strconcat ("card-", figure, ":", self->id, NULL);
  GError *error = NULL;
  PpPanel *next = pp_edit_set_pose (get_panel (self), self->id, pose, &error);

  next = pp_stand_follow (next, (const char *[]) { self->id, NULL }, &error);
  pp_card_face_take (PP_CARD_FACE (self), next, error, label, stepped ? key : NULL);
}

/* The pose as it is, for one figure of it to be changed; FALSE if the piece is gone. */
static gboolean
get_pose (PpCardPiece *self,
          guint       *index,
          PpPose      *pose)
{
  const PpPlacement *placement = get_placement (self, index);

  if (placement == NULL)
    return FALSE;
  *pose = (PpPose) { placement->x, placement->y, placement->rotation, placement->mirrored };
  return TRUE;
}

static void
left_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpCardPiece   *self)
{
  PpPose pose;
  guint index;

  if (!get_pose (self, &index, &pose))
    return;
  pose.x = get_glass (self).x0 + value;
  take_pose (self, index, pose, "left", stepped);
}

static void
top_cb (PpFigureEntry *entry,
        double         value,
        gboolean       stepped,
        PpCardPiece   *self)
{
  PpPose pose;
  guint index;

  if (!get_pose (self, &index, &pose))
    return;
  pose.y = get_glass (self).y0 + value;
  take_pose (self, index, pose, "top", stepped);
}

static void
turn_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpCardPiece   *self)
{
  PpPose pose;
  guint index;

  if (!get_pose (self, &index, &pose))
    return;
  pose.rotation = value;
  take_pose (self, index, pose, "turn", stepped);
}

static void
stack_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpCardPiece   *self)
{
  guint index;
  g_autofree char *name = NULL, *label = NULL, *key = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (get_placement (self, &index) == NULL)
    return;
  name = pp_placement_words_piece (get_panel (self), index);
  label = g_strdup_printf (value > index ? _("Lift %s") : _("Lower %s"), name);
  key = g_strconcat ("card-stack:", self->id, NULL);
  next = pp_edit_restack (get_panel (self), self->id, (guint) value - 1, &error);
  pp_card_face_take (PP_CARD_FACE (self), next, error, label, stepped ? key : NULL);
}

static void
group_cb (PpTextEntry *entry,
          const char  *text,
          PpCardPiece *self)
{
  const char * const ids[] = { self->id, NULL };
  GError *error = NULL;
  PpPanel *next;

  if (get_placement (self, NULL) == NULL)
    return;
  next = pp_edit_group (get_panel (self), ids, *text != '\0' ? text : NULL, &error);
  pp_card_face_take (PP_CARD_FACE (self), next, error,
                     *text != '\0' ? _("Name the group") : _("Take out of the group"), NULL);
}

static void
pocket_cb (GtkDropDown *pocket,
           GParamSpec  *pspec,
           PpCardPiece *self)
{
  const PpFused *part;
  GError *error = NULL;
  PpPanel *next;

  if (self->showing || get_placement (self, NULL) == NULL)
    return;
  part = pp_pocket_list_get_part (self->fused, gtk_drop_down_get_selected (pocket));
  next = pp_edit_set_pocket (get_panel (self), self->id, part != NULL ? part->id : NULL, &error);
  pp_card_face_take (PP_CARD_FACE (self), next, error,
                     part != NULL ? _("Put into the pocket") : _("Take out of the pocket"), NULL);
}

static void
list_pockets (PpCardPiece *self,
              GPtrArray   *fused)
{
  g_autoptr (GtkStringList) names = pp_pocket_list_new (fused);

  g_clear_pointer (&self->fused, g_ptr_array_unref);
  self->fused = g_ptr_array_ref (fused);
  gtk_drop_down_set_model (self->pocket, G_LIST_MODEL (names));
}

static void
show_pocket (PpCardPiece       *self,
             const PpPanel     *panel,
             const PpPlacement *placement)
{
  gboolean is_stem = pp_panel_get_piece_of (panel, placement)->kind == PP_KIND_STEM;
  gboolean has_pocket = pp_pocket_list_get_part (panel->fused, 1) != NULL;
  gboolean is_shown = has_pocket && (is_stem || placement->pocket != NULL);
  guint position;

  self->showing = TRUE;
  if (self->fused != panel->fused)
    list_pockets (self, panel->fused);
  position = pp_pocket_list_find (panel->fused, placement->pocket);
  if (gtk_drop_down_get_selected (self->pocket) != position)
    gtk_drop_down_set_selected (self->pocket, position);
  self->showing = FALSE;
  gtk_widget_set_visible (self->pocket_title, is_shown);
  gtk_widget_set_visible (GTK_WIDGET (self->pocket), is_shown);
}

/* "top 12 mm over the glass", and its underside if that is not on the glass. */
static char *
describe_height (PpDocument *document,
                 const char *id)
{
  PpUnits units = pp_document_get_panel (document)->units;
  double top = pp_document_get_top (document, id);
  double base = pp_document_get_base (document, id);
  g_autofree char *high = NULL, *low = NULL;

  if (isnan (top))
    return g_strdup ("");
  high = pp_length_format (fmax (top, 0), units);
  if (base < ON_THE_GLASS)
    return g_strdup_printf (_("top %s over the glass"), high);
  low = pp_length_format (base, units);
  /* Translators: heights of a piece over the glass. */
  return g_strdup_printf (_("top %s over the glass, underside %s"), high, low);
}

static void
show_state (PpCardPiece       *self,
            PpDocument        *document,
            const PpPlacement *placement)
{
  g_autofree char *state = pp_placement_words_state (document, placement->id);
  g_autofree char *height = describe_height (document, placement->id);
  g_autoptr (GString) text = g_string_new (state);

  if (*height != '\0')
    g_string_append_printf (text, "\n%s", height);
  if (placement->mirrored)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", _("mirrored"));
  pp_say_or_hide (self->state, text->str);
}

static double
within_turn (double degrees)
{
  double turn = fmod (degrees, 360);

  if (turn < 0)
    turn += 360;
  return turn > NEARLY_ROUND ? turn - 360 : turn;
}

static void
show_figures (PpCardPiece       *self,
              const PpPanel     *panel,
              const PpPlacement *placement,
              guint              index)
{
  g_autofree char *of = g_strdup_printf (_("of %u"), panel->placements->len);

  gtk_widget_set_sensitive (GTK_WIDGET (self->left), !placement->pinned);
  gtk_widget_set_sensitive (GTK_WIDGET (self->top), !placement->pinned);
  gtk_widget_set_sensitive (GTK_WIDGET (self->turn), !placement->pinned);
  pp_length_entry_set_units (self->left, panel->units);
  pp_length_entry_set_units (self->top, panel->units);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->left), placement->x - get_glass (self).x0);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->top), placement->y - get_glass (self).y0);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->turn), within_turn (placement->rotation));
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->stack), 1, panel->placements->len);
  pp_figure_entry_set_unit (PP_FIGURE_ENTRY (self->stack), of, of);
  pp_figure_entry_set_value (PP_FIGURE_ENTRY (self->stack), index + 1);
}

/* A long name is cut, so that the card does not grow with it. */
static void
name_button (GtkButton  *button,
             const char *label)
{
  GtkWidget *words;

  gtk_widget_set_visible (GTK_WIDGET (button), label != NULL);
  if (label == NULL || g_strcmp0 (gtk_button_get_label (button), label) == 0)
    return;
  gtk_button_set_label (button, label);
  words = gtk_button_get_child (button);
  gtk_label_set_ellipsize (GTK_LABEL (words), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (words), MOST_CHARS);
}

/* What it would go over or under. */
static void
show_next (PpCardPiece *self,
           PpDocument  *document)
{
  g_autofree char *over = pp_arrange_acts_name_next (document, TRUE);
  g_autofree char *under = pp_arrange_acts_name_next (document, FALSE);

  name_button (self->over, over);
  name_button (self->under, under);
  gtk_widget_set_visible (self->past, over != NULL || under != NULL);
}

static gboolean
next_cb (gpointer data)
{
  PpCardPiece *self = data;

  self->next_timer = 0;
  if (get_placement (self, NULL) != NULL)
    show_next (self, pp_card_face_get_document (PP_CARD_FACE (self)));
  return G_SOURCE_REMOVE;
}

static void
show_another (PpCardPiece *self,
              const char  *id)
{
  if (g_strcmp0 (self->id, id) == 0)
    return;
  pp_card_face_put_back (PP_CARD_FACE (self));
  g_free (self->id);
  self->id = g_strdup (id);
}

static void
pp_card_piece_refresh (PpCardFace *face,
                       PpDocument *document)
{
  PpCardPiece *self = PP_CARD_PIECE (face);
  const PpPanel *panel = pp_document_get_panel (document);
  gboolean is_another = g_strcmp0 (self->id, pp_document_get_chosen_ids (document)[0]) != 0;
  const PpPlacement *placement;
  g_autofree char *name = NULL;
  guint index;

  show_another (self, pp_document_get_chosen_ids (document)[0]);
  placement = get_placement (self, &index);
  if (placement == NULL)
    return;
  name = pp_placement_words_piece (panel, index);
  pp_say_or_hide (self->name, name);
  show_state (self, document, placement);
  show_figures (self, panel, placement, index);
  show_pocket (self, panel, placement);
  if (is_another)
    show_next (self, document);
  else if (self->next_timer == 0)
    self->next_timer = g_timeout_add (PACE_MS, next_cb, self);
  gtk_widget_set_visible (self->ungroup, placement->group != NULL);
  pp_text_entry_set_words (self->group, placement->group != NULL ? placement->group : "");
}

static void
pp_card_piece_dispose (GObject *object)
{
  g_clear_handle_id (&PP_CARD_PIECE (object)->next_timer, g_source_remove);
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_PIECE);
  G_OBJECT_CLASS (pp_card_piece_parent_class)->dispose (object);
}

static void
pp_card_piece_finalize (GObject *object)
{
  PpCardPiece *self = PP_CARD_PIECE (object);

  g_free (self->id);
  g_clear_pointer (&self->fused, g_ptr_array_unref);
  G_OBJECT_CLASS (pp_card_piece_parent_class)->finalize (object);
}

static void
pp_card_piece_class_init (PpCardPieceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = pp_card_piece_dispose;
  object_class->finalize = pp_card_piece_finalize;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_piece_refresh;
  g_type_ensure (PP_TYPE_ANGLE_ENTRY);
  g_type_ensure (PP_TYPE_COUNT_ENTRY);
  g_type_ensure (PP_TYPE_FOLD);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_TEXT_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-piece.ui");
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, name);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, state);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, left);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, top);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, turn);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, stack);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, past);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, over);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, under);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, ungroup);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, group);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, pocket_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardPiece, pocket);
  gtk_widget_class_bind_template_callback (widget_class, left_cb);
  gtk_widget_class_bind_template_callback (widget_class, top_cb);
  gtk_widget_class_bind_template_callback (widget_class, turn_cb);
  gtk_widget_class_bind_template_callback (widget_class, stack_cb);
  gtk_widget_class_bind_template_callback (widget_class, group_cb);
  gtk_widget_class_bind_template_callback (widget_class, pocket_cb);
}

static void
pp_card_piece_init (PpCardPiece *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->left), -PP_FARTHEST, PP_FARTHEST);
  pp_figure_entry_set_range (PP_FIGURE_ENTRY (self->top), -PP_FARTHEST, PP_FARTHEST);
  pp_drop_down_tell (self->pocket, self->pocket_title);
}
