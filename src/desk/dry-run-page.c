/* dry-run-page.c: the first page of the work.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Puts the parts side by side and passes on what one of them says to the others; each follows the
 * document by itself.
 */
#include "config.h"

#include "desk/dry-run-page.h"

#include "desk/card.h"
#include "desk/focus-within.h"
#include "desk/margin.h"
#include "desk/ruler.h"
#include "desk/side-layout.h"
#include "desk/template.h"
#include "desk/tray.h"
#include "desk/true-scale.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"

#define CARD_GAP 18 /* px between a piece and its card */
#define ZOOM_STEP 1.25

struct _PpDryRunPage
{
  GtkWidget      parent_instance;
  PpDocument    *document;

  PpCanvas      *canvas;
  GtkWidget     *drawing;
  GtkWidget     *walk;
  GtkWidget     *stand;
  PpRuler       *across;
  PpRuler       *down;
  GtkOverlay    *overlay;
  PpCard        *card;
  PpMargin      *margin;
  PpTray        *tray;
  GtkAdjustment *sideways;
  GtkLabel      *zoom;
  GtkLabel      *unit;
};

G_DEFINE_FINAL_TYPE (PpDryRunPage, pp_dry_run_page, GTK_TYPE_WIDGET)

enum
{
  PROP_DOCUMENT = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show_rulers (PpDryRunPage *self)
{
  const PpZoom *zoom = pp_canvas_get_zoom (self->canvas);
  PpUnits units = PP_UNITS_MM;

  if (self->document != NULL)
    units = pp_document_get_panel (self->document)->units;
  pp_ruler_set (self->across, zoom, units);
  pp_ruler_set (self->down, zoom, units);
  gtk_label_set_text (self->unit, units == PP_UNITS_INCH ? _("in") : _("mm"));
}

/* Asks the display which monitor it is: not for every frame of a drag. */
static void
show_zoom (PpDryRunPage *self)
{
  double scale = pp_canvas_get_zoom (self->canvas)->scale;
  g_autofree char *text = pp_true_scale_format (GTK_WIDGET (self), scale);

  pp_tray_set_scale (self->tray, scale);
  gtk_label_set_text (self->zoom, text);
}

static void
zoomed_cb (PpCanvas     *canvas,
           PpDryRunPage *self)
{
  show_rulers (self);
  show_zoom (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self->overlay));
}

static void
pin_cb (PpCanvas     *canvas,
        guint         index,
        PpDryRunPage *self)
{
  pp_margin_open (self->margin, index);
}

static void
light_cb (PpMargin     *margin,
          int           index,
          PpDryRunPage *self)
{
  pp_canvas_light_finding (self->canvas, index);
}

static void
show_me_cb (PpMargin     *margin,
            guint         index,
            PpDryRunPage *self)
{
  pp_canvas_show_finding (self->canvas, index);
}

static void
place_cb (PpTray       *tray,
          const char   *piece,
          PpDryRunPage *self)
{
  pp_canvas_place (self->canvas, piece);
}

static void
leave_cb (PpCard       *card,
          PpDryRunPage *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
sideways_cb (GtkAdjustment *sideways,
             PpDryRunPage  *self)
{
  PpLook look = pp_canvas_get_look (self->canvas);

  look.sideways = gtk_adjustment_get_value (sideways);
  pp_canvas_set_look (self->canvas, look);
}

/* Where the card hides least: beside the glass, or as far out as there is room, on the side where
 * what is chosen lies, or on the other where it would hide that. */
static int
find_card_x (int                 width,
             int                 card,
             const GdkRectangle *glass,
             const GdkRectangle *box)
{
  int right = MIN (glass->x + glass->width + CARD_GAP, width - card);
  int left = MAX (glass->x - CARD_GAP - card, 0);
  gboolean right_is_free = right >= box->x + box->width;
  gboolean left_is_free = left + card <= box->x;
  gboolean to_the_right = box->x + box->width / 2 >= glass->x + glass->width / 2;

  if (right_is_free && (to_the_right || !left_is_free))
    return right;
  if (left_is_free)
    return left;
  return to_the_right ? 0 : width - card;
}

static gboolean
place_card (GtkOverlay   *overlay,
            GtkWidget    *child,
            GdkRectangle *at,
            PpDryRunPage *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (overlay));
  int height = gtk_widget_get_height (GTK_WIDGET (overlay));
  GtkRequisition size;
  GdkRectangle box = { 0, 0, 0, 0 }, glass = { 0, 0, width, height };

  if (child != GTK_WIDGET (self->card) || self->document == NULL)
    return FALSE;
  gtk_widget_get_preferred_size (child, NULL, &size);
  pp_canvas_get_glass_rectangle (self->canvas, &glass);
  if (!pp_canvas_get_chosen_box (self->canvas, &box))
    box = glass;
  at->width = MIN (size.width, width);
  at->height = MIN (size.height, height);
  at->x = find_card_x (width, at->width, &glass, &box);
  at->y = box.y + box.height / 2 - at->height / 2;
  at->y = CLAMP (at->y, 0, MAX (0, height - at->height));
  return TRUE;
}

static void
moved_cb (PpDocument   *document,
          PpDryRunPage *self)
{
  gtk_widget_queue_allocate (GTK_WIDGET (self->overlay));
}

static void
changed_cb (PpDocument   *document,
            PpDryRunPage *self)
{
  show_rulers (self);
  moved_cb (document, self);
}

static void
let_go (PpDryRunPage *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
set_document (PpDryRunPage *self,
              PpDocument   *document)
{
  let_go (self);
  self->document = document != NULL ? g_object_ref (document) : NULL;
  pp_canvas_set_document (self->canvas, document);
  pp_card_set_document (self->card, document);
  pp_margin_set_document (self->margin, document);
  pp_tray_set_document (self->tray, document);
  gtk_adjustment_set_value (self->sideways, 0);
  if (document == NULL)
    return;
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (document, "chosen", G_CALLBACK (moved_cb), self);
  show_rulers (self);
  show_zoom (self);
}

static void
pp_dry_run_page_set_property (GObject      *object,
                              guint         prop_id,
                              const GValue *value,
                              GParamSpec   *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    set_document (PP_DRY_RUN_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static gboolean
pp_dry_run_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (PP_DRY_RUN_PAGE (widget)->canvas));
}

static void
pp_dry_run_page_dispose (GObject *object)
{
  PpDryRunPage *self = PP_DRY_RUN_PAGE (object);

  let_go (self);
  pp_template_dispose (GTK_WIDGET (self), PP_TYPE_DRY_RUN_PAGE);
  G_OBJECT_CLASS (pp_dry_run_page_parent_class)->dispose (object);
}

/* To where it was left, or its first piece. */
static void
to_tray_cb (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  gtk_widget_child_focus (GTK_WIDGET (PP_DRY_RUN_PAGE (widget)->tray), GTK_DIR_TAB_FORWARD);
}

static void
zoom_in_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  pp_canvas_zoom_by (PP_DRY_RUN_PAGE (widget)->canvas, ZOOM_STEP);
}

static void
zoom_out_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  pp_canvas_zoom_by (PP_DRY_RUN_PAGE (widget)->canvas, 1 / ZOOM_STEP);
}

static void
zoom_fit_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  pp_canvas_zoom_fit (PP_DRY_RUN_PAGE (widget)->canvas);
}

static void
zoom_true_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  pp_canvas_zoom_to (PP_DRY_RUN_PAGE (widget)->canvas, pp_true_scale_of (widget));
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, canvas);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, drawing);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, walk);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, stand);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, across);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, down);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, overlay);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, card);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, margin);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, tray);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, sideways);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, zoom);
  gtk_widget_class_bind_template_child (widget_class, PpDryRunPage, unit);
}

static void
pp_dry_run_page_class_init (PpDryRunPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_dry_run_page_dispose;
  G_OBJECT_CLASS (klass)->set_property = pp_dry_run_page_set_property;
  widget_class->focus = pp_focus_within;
  widget_class->grab_focus = pp_dry_run_page_grab_focus;
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, PP_TYPE_DOCUMENT,
                                              G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  g_type_ensure (PP_TYPE_CANVAS);
  g_type_ensure (PP_TYPE_CARD);
  g_type_ensure (PP_TYPE_MARGIN);
  g_type_ensure (PP_TYPE_RULER);
  g_type_ensure (PP_TYPE_SIDE_LAYOUT);
  g_type_ensure (PP_TYPE_TRAY);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/dry-run-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, zoomed_cb);
  gtk_widget_class_bind_template_callback (widget_class, pin_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_me_cb);
  gtk_widget_class_bind_template_callback (widget_class, light_cb);
  gtk_widget_class_bind_template_callback (widget_class, place_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, sideways_cb);
  gtk_widget_class_bind_template_callback (widget_class, place_card);
  gtk_widget_class_install_action (widget_class, "page.to-tray", NULL, to_tray_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-in", NULL, zoom_in_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-out", NULL, zoom_out_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-fit", NULL, zoom_fit_cb);
  gtk_widget_class_install_action (widget_class, "page.zoom-true", NULL, zoom_true_cb);
}

/* Left is left, of the glass and of who looks at it, whichever way is read. */
static void
pp_dry_run_page_init (PpDryRunPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_direction (self->drawing, GTK_TEXT_DIR_LTR);
  gtk_widget_set_direction (self->walk, GTK_TEXT_DIR_LTR);
  gtk_widget_set_direction (self->stand, GTK_TEXT_DIR_LTR);
  gtk_widget_set_direction (GTK_WIDGET (self->zoom), GTK_TEXT_DIR_LTR);
}

PpCanvas *
pp_dry_run_page_get_canvas (PpDryRunPage *self)
{
  g_return_val_if_fail (PP_IS_DRY_RUN_PAGE (self), NULL);
  return self->canvas;
}
