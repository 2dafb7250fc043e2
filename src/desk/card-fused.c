/* card-fused.c: the card of a part fused onto the glass: a vase and its pocket.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The measures are read from the outline. As the card of a piece it keeps the id of what it shows.
 */
#include "config.h"

#include "desk/card-fused-private.h"

#include "desk/chosen-colour.h"
#include "desk/colour-button.h"
#include "desk/drop-down.h"
#include "desk/fold.h"
#include "desk/fuse-acts.h"
#include "desk/length-entry.h"
#include "desk/template.h"
#include "desk/text-entry.h"
#include "panel/edit.h"
#include "panel/i18n.h"

#define THINNEST 0.5 /* mm */

G_DEFINE_FINAL_TYPE (PpCardFused, pp_card_fused, PP_TYPE_CARD_FACE)

/* What is shown, or NULL if it is gone, or while controls are only being set. */
static const PpFused *
get_fused (PpCardFused *self)
{
  PpDocument *document = pp_card_face_get_document (PP_CARD_FACE (self));

  if (self->showing || self->id == NULL || document == NULL)
    return NULL;
  return pp_panel_find_fused (pp_document_get_panel (document), self->id, NULL);
}

static const PpPanel *
get_panel (PpCardFused *self)
{
  return pp_document_get_panel (pp_card_face_get_document (PP_CARD_FACE (self)));
}

/* `label` is taken. */
static void
take (PpCardFused *self,
      PpPanel     *next,
      GError      *error,
      char        *label,
      const char  *figure,
      gboolean     stepped)
{
  g_autofree char *key = g_strconcat ("card-fused-", figure, ":", self->id, NULL);

  pp_card_face_take (PP_CARD_FACE (self), next, error, label, stepped ? key : NULL);
  g_free (label);
}

static void
take_draft (PpCardFused   *self,
            const PpFused *draft,
            char          *label,
            const char    *figure,
            gboolean       stepped)
{
  GError *error = NULL;
  g_autoptr (PpFused) fused = pp_fused_new (draft, &error);
  PpPanel *next = fused != NULL ? pp_edit_set_fused (get_panel (self), fused, &error) : NULL;

  take (self, next, error, label, figure, stepped);
}

/* Of a kind of its own proportions, as tall as the one before. */
static void
shape_cb (GtkDropDown *shape,
          GParamSpec  *pspec,
          PpCardFused *self)
{
  const PpFused *fused = get_fused (self);
  PpVaseKind kind = (PpVaseKind) gtk_drop_down_get_selected (shape);
  PpVase vase;
  double grown;
  GError *error = NULL;
  PpPanel *next;

  if (fused == NULL || kind >= PP_VASE_OWN)
    return;
  vase = pp_vase_wish (get_panel (self), kind);
  grown = pp_box_height (pp_outline_get_box (fused->outline)) / vase.height;
  vase.height *= grown;
  vase.mouth *= grown;
  vase.widest *= grown;
  vase.foot *= grown;
  next = pp_edit_set_vase (get_panel (self), self->id, &vase, &error);
  take (self, next, error,
        g_strdup_printf (_("Shape of %s"), pp_fuse_acts_name (fused)), "shape", FALSE);
}

static void
place_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpCardFused   *self)
{
  const PpFused *fused = get_fused (self);
  gboolean is_left = entry == self->left;
  GError *error = NULL;
  PpPanel *next;
  PpBox glass, box;

  if (fused == NULL)
    return;
  glass = pp_background_get_box (get_panel (self)->background);
  box = pp_outline_get_box (fused->outline);
  next = pp_edit_move_fused (get_panel (self), self->id, is_left ? glass.x0 + value - box.x0 : 0,
                             is_left ? 0 : glass.y0 + value - box.y0, &error);
  take (self, next, error,
        g_strdup_printf (_("Move %s"), pp_fuse_acts_name (fused)),
        is_left ? "left" : "top", stepped);
}

static void
size_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpCardFused   *self)
{
  const PpFused *fused = get_fused (self);
  GError *error = NULL;
  PpPanel *next;
  PpVase vase;
  const struct
  {
    PpFigureEntry *entry;
    double        *measure;
    const char    *figure;
  } figures[] = {
    { self->height, &vase.height, "height" },
    { self->mouth, &vase.mouth, "mouth" },
    { self->widest, &vase.widest, "widest" },
    { self->foot, &vase.foot, "foot" },
  };

  if (fused == NULL)
    return;
  vase = pp_vase_read (fused->outline);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    if (figures[i].entry == entry)
      {
        *figures[i].measure = value;
        next = pp_edit_set_vase (get_panel (self), self->id, &vase, &error);
        take (self, next, error,
              g_strdup_printf (_("Size of %s"), pp_fuse_acts_name (fused)),
              figures[i].figure, stepped);
        return;
      }
}

static void
pocket_cb (GtkSwitch   *pocket,
           GParamSpec  *pspec,
           PpCardFused *self)
{
  const PpFused *fused = get_fused (self);
  gboolean is_open = gtk_switch_get_active (pocket);
  GError *error = NULL;
  PpPanel *next;

  if (fused == NULL)
    return;
  if (is_open)
    next = pp_edit_cut_pocket (get_panel (self), self->id, NAN, NAN, &error);
  else
    next = pp_edit_close_pocket (get_panel (self), self->id, &error);
  take (self, next, error,
        g_strdup_printf (is_open ? _("A pocket in %s") : _("No pocket in %s"),
                         pp_fuse_acts_name (fused)),
        "pocket", FALSE);
}

static void
pocket_size_cb (PpFigureEntry *entry,
                double         value,
                gboolean       stepped,
                PpCardFused   *self)
{
  const PpFused *fused = get_fused (self);
  gboolean is_wide = entry == self->wide;
  double wide, deep;
  GError *error = NULL;
  PpPanel *next;

  if (fused == NULL || !fused->has_pocket)
    return;
  pp_card_fused_measure_pocket (fused, &wide, &deep);
  next = pp_edit_cut_pocket (get_panel (self), self->id, is_wide ? value : wide,
                             is_wide ? deep : value, &error);
  take (self, next, error,
        g_strdup_printf (_("Pocket of %s"), pp_fuse_acts_name (fused)),
        is_wide ? "wide" : "deep", stepped);
}

static void
figure_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpCardFused   *self)
{
  const PpFused *fused = get_fused (self);
  PpFused draft;

  if (fused == NULL)
    return;
  draft = *fused;
  if (entry == self->thick)
    draft.thickness = value;
  else if (entry == self->insert)
    draft.pocket.insert_thickness = value;
  else
    draft.pocket.gap = value;
  take_draft (self, &draft,
              g_strdup_printf (entry == self->thick ? _("Thickness of %s") : _("Pocket of %s"),
                               pp_fuse_acts_name (fused)),
              entry == self->thick ? "thick" : entry == self->insert ? "insert" : "gap", stepped);
}

static void
name_cb (PpTextEntry *entry,
         const char  *text,
         PpCardFused *self)
{
  const PpFused *fused = get_fused (self);
  PpFused draft;

  if (fused == NULL)
    return;
  draft = *fused;
  draft.name = text;
  take_draft (self, &draft,
              g_strdup_printf (_("Name of %s"), pp_fuse_acts_name (fused)), "name", FALSE);
}

static void
light_cb (GtkDropDown *light,
          GParamSpec  *pspec,
          PpCardFused *self)
{
  const PpFused *fused = get_fused (self);
  PpFused draft;

  if (fused == NULL)
    return;
  draft = *fused;
  draft.glass.transmittance = pp_card_fused_lights[gtk_drop_down_get_selected (light)];
  take_draft (self, &draft,
              g_strdup_printf (_("Light through %s"), pp_fuse_acts_name (fused)), "light", FALSE);
}

static void
colour_cb (GtkColorButton *button,
           PpCardFused    *self)
{
  const PpFused *fused = get_fused (self);
  g_autofree char *colour = NULL;
  PpFused draft;

  if (fused == NULL)
    return;
  colour = pp_chosen_colour_dup (self->colour);
  draft = *fused;
  draft.glass.colour = colour;
  take_draft (self, &draft,
              g_strdup_printf (_("Colour of %s"), pp_fuse_acts_name (fused)), "colour", FALSE);
}

static void
is_vase_cb (GtkSwitch   *is_vase,
            GParamSpec  *pspec,
            PpCardFused *self)
{
  const PpFused *fused = get_fused (self);
  PpFused draft;

  if (fused == NULL)
    return;
  draft = *fused;
  draft.role = gtk_switch_get_active (is_vase) ? PP_ROLE_VASE : PP_ROLE_SHAPE;
  take_draft (self, &draft,
              g_strdup_printf (_("What %s is"), pp_fuse_acts_name (fused)), "role", FALSE);
}

static void
remove_cb (GtkButton   *button,
           PpCardFused *self)
{
  if (get_fused (self) != NULL)
    pp_fuse_acts_remove (pp_card_face_get_document (PP_CARD_FACE (self)));
}

static void
pp_card_fused_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_CARD_FUSED);
  G_OBJECT_CLASS (pp_card_fused_parent_class)->dispose (object);
}

static void
pp_card_fused_finalize (GObject *object)
{
  g_free (PP_CARD_FUSED (object)->id);
  G_OBJECT_CLASS (pp_card_fused_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, state);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, shape_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, shape);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, left);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, top);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, height);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, mouth_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, mouth);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, widest_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, widest);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, foot_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, foot);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, pocket);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, wide_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, wide);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, deep_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, deep);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, insert_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, insert);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, gap_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, gap);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, name);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, thick);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, light_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, light);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, colour_title);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, colour);
  gtk_widget_class_bind_template_child (widget_class, PpCardFused, is_vase);
}

static void
pp_card_fused_class_init (PpCardFusedClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_card_fused_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_card_fused_finalize;
  PP_CARD_FACE_CLASS (klass)->refresh = pp_card_fused_refresh;
  g_type_ensure (PP_TYPE_FOLD);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_TEXT_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/card-fused.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, shape_cb);
  gtk_widget_class_bind_template_callback (widget_class, place_cb);
  gtk_widget_class_bind_template_callback (widget_class, size_cb);
  gtk_widget_class_bind_template_callback (widget_class, pocket_cb);
  gtk_widget_class_bind_template_callback (widget_class, pocket_size_cb);
  gtk_widget_class_bind_template_callback (widget_class, figure_cb);
  gtk_widget_class_bind_template_callback (widget_class, name_cb);
  gtk_widget_class_bind_template_callback (widget_class, light_cb);
  gtk_widget_class_bind_template_callback (widget_class, colour_cb);
  gtk_widget_class_bind_template_callback (widget_class, is_vase_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
pp_card_fused_init (PpCardFused *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (self->height, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->mouth, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->widest, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->foot, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->wide, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->deep, PP_VASE_LEAST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->thick, THINNEST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->insert, THINNEST, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->gap, 0, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->left, -PP_FARTHEST, PP_FARTHEST);
  pp_figure_entry_set_range (self->top, -PP_FARTHEST, PP_FARTHEST);
  pp_drop_down_tell (self->shape, self->shape_title);
  pp_drop_down_tell (self->light, self->light_title);
  pp_colour_button_tell (GTK_COLOR_BUTTON (self->colour), self->colour_title);
}
