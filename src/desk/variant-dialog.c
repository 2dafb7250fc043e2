/* variant-dialog.c: another panel like this, or this one on glass of another size, to look at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/variant-dialog.h"

#include "desk/em.h"
#include "desk/lines.h"
#include "desk/panel-picture.h"
#include "desk/size-form.h"
#include "desk/variant.h"
#include "desk/variant-maker.h"
#include "panel/i18n.h"

#define PICTURE_EM 40 /* side of the picture where there is room; at least a third of that */
#define HEIGHT_EM 50  /* of the window: what is said comes in later */
#define LOOK_MSEC 100
#define MOST_LINES 6 /* of one kind; the glass shows the rest */

struct _PpVariantDialog
{
  GtkWindow       parent_instance;
  PpDocument     *document;
  PpVariantMaker *maker;
  guint           timer;   /* while it searches */
  GtkWidget      *pressed; /* that goes on with the search, where the focus comes back to */

  GtkPicture     *picture;
  PpSizeForm     *size;
  GtkLabel       *sum;
  GtkWidget      *searching;
  GtkProgressBar *bar;
  GtkWidget      *rights;
  GtkBox         *righted;
  GtkWidget      *leaves;
  GtkBox         *left;
  GtkWidget      *make;
  GtkBox         *to_make;
  GtkWidget      *back;
  GtkWidget      *another;
  GtkWidget      *accept;
};

G_DEFINE_FINAL_TYPE (PpVariantDialog, pp_variant_dialog, GTK_TYPE_WINDOW)

static guint accepted;

/* Under its heading, which goes where there is nothing to say. The box stays: of one that was empty
 * and hidden GTK 4.8 remembers that its width does not change its height. `lines` is borrowed. */
static void
show_lines (GtkWidget *heading,
            GtkBox    *box,
            GPtrArray *lines)
{
  guint n = MIN (lines->len, MOST_LINES);

  pp_lines_clear (box);
  for (guint i = 0; i < n; i++)
    pp_lines_add (box, g_ptr_array_index (lines, i));
  if (lines->len > n)
    {
      g_autofree char *more = g_strdup_printf (ngettext ("And %u more.", "And %u more.",
                                                         lines->len - n), lines->len - n);

      pp_lines_add (box, more);
    }
  gtk_widget_set_visible (heading, lines->len > 0);
}

static void
show_advice (PpVariantDialog *self,
             const PpAdvice  *advice)
{
  g_autoptr (GPtrArray) righted = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) left = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; advice != NULL && i < advice->changes->len; i++)
    {
      const PpChange *change = g_ptr_array_index (advice->changes, i);

      /* Translators: a change, "the wire 12 mm longer", as a sentence of its own. */
      g_ptr_array_add (righted, g_strdup_printf (_("%s."), change->text));
    }
  for (guint i = 0; advice != NULL && i < advice->left->len; i++)
    g_ptr_array_add (left, g_strdup (((const PpFinding *) g_ptr_array_index (advice->left,
                                                                             i))->text));
  show_lines (self->rights, self->righted, righted);
  show_lines (self->leaves, self->left, left);
}

/* Of a panel just read the art comes in later, and the document tells of it. */
static void
draw (PpVariantDialog *self)
{
  int side = (int) (PICTURE_EM * pp_em_of (GTK_WIDGET (self)));
  const PpPanel *panel = pp_variant_dialog_get_panel (self);
  PpGallery *gallery = pp_document_get_gallery (self->document);
  g_autoptr (PpScene) scene = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autoptr (GdkPaintable) paintable = NULL;

  gtk_widget_set_size_request (GTK_WIDGET (self->picture), side / 3, side / 3);
  if (panel == NULL)
    gtk_picture_set_paintable (self->picture, NULL);
  if (gallery == NULL || panel == NULL)
    return;
  scene = pp_scene_new (panel, NULL);
  texture = pp_panel_picture_new (scene, gallery, side * 2, NULL, NULL);
  paintable = pp_panel_picture_halve (texture);
  gtk_picture_set_paintable (self->picture, paintable);
}

static void
show (PpVariantDialog *self)
{
  gboolean needs_size = pp_variant_maker_needs_size (self->maker);
  gboolean is_ready = pp_variant_maker_is_made (self->maker) && !needs_size;
  g_autofree char *sum = needs_size ? g_strdup (_("Choose the size of the glass that you have."))
                                    : pp_variant_maker_describe (self->maker);

  gtk_label_set_text (self->sum, sum);
  gtk_widget_set_visible (self->searching, pp_variant_maker_is_searching (self->maker));
  gtk_widget_set_sensitive (self->accept, is_ready);
  gtk_widget_set_sensitive (self->another, is_ready);
  gtk_widget_set_sensitive (self->back,
                            is_ready && pp_variant_maker_get_number (self->maker) > 0);
  show_advice (self, pp_variant_maker_get_advice (self->maker));
  draw (self);
}

/* A button that went to sleep under the finger, or is gone, had the focus. */
static void
return_focus (PpVariantDialog *self)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  if (focus != NULL && gtk_widget_get_mapped (focus) && gtk_widget_is_sensitive (focus))
    return;
  gtk_widget_grab_focus (self->pressed != NULL && gtk_widget_is_sensitive (self->pressed)
                           ? self->pressed
                           : self->accept);
}

static void
made_cb (PpVariantMaker  *maker,
         PpVariantDialog *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  show (self);
  return_focus (self);
}

static gboolean
look_cb (gpointer data)
{
  PpVariantDialog *self = data;

  gtk_progress_bar_set_fraction (self->bar, pp_variant_maker_get_done (self->maker));
  return G_SOURCE_CONTINUE;
}

/* Something else is wished for. */
static void
look_anew (PpVariantDialog *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  gtk_progress_bar_set_fraction (self->bar, 0);
  if (pp_variant_maker_is_searching (self->maker))
    self->timer = g_timeout_add (LOOK_MSEC, look_cb, self);
  show (self);
}

static void
size_cb (PpSizeForm      *form,
         PpVariantDialog *self)
{
  self->pressed = NULL;
  pp_variant_maker_set_size (self->maker, pp_size_form_get_width (form),
                             pp_size_form_get_height (form));
  look_anew (self);
}

static void
go_to (PpVariantDialog *self,
       guint            number,
       GtkWidget       *pressed)
{
  self->pressed = pressed;
  pp_variant_maker_go_to (self->maker, number);
  look_anew (self);
}

static void
another_cb (GtkButton       *button,
            PpVariantDialog *self)
{
  if (!pp_size_form_is_wrong (self->size))
    go_to (self, pp_variant_maker_get_number (self->maker) + 1, self->another);
}

static void
back_cb (GtkButton       *button,
         PpVariantDialog *self)
{
  go_to (self, pp_variant_maker_get_number (self->maker) - 1, self->back);
}

static void
stop_cb (GtkButton       *button,
         PpVariantDialog *self)
{
  pp_variant_maker_stop (self->maker);
}

static void
accept_cb (GtkButton       *button,
           PpVariantDialog *self)
{
  if (!pp_size_form_is_wrong (self->size) && pp_variant_maker_is_made (self->maker))
    g_signal_emit (self, accepted, 0);
}

static void
leave_cb (GtkButton       *button,
          PpVariantDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
drawn_cb (PpDocument      *document,
          PpVariantDialog *self)
{
  draw (self);
}

static void
pp_variant_dialog_dispose (GObject *object)
{
  PpVariantDialog *self = PP_VARIANT_DIALOG (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->maker != NULL)
    {
      pp_variant_maker_give_up (self->maker);
      g_signal_handlers_disconnect_by_data (self->maker, self);
    }
  g_clear_object (&self->maker);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_VARIANT_DIALOG);
  G_OBJECT_CLASS (pp_variant_dialog_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, picture);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, size);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, searching);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, bar);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, rights);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, righted);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, leaves);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, left);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, make);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, to_make);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, back);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, another);
  gtk_widget_class_bind_template_child (widget_class, PpVariantDialog, accept);
}

static void
pp_variant_dialog_class_init (PpVariantDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_variant_dialog_dispose;
  accepted = g_signal_new ("accepted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                           NULL, G_TYPE_NONE, 0);
  g_type_ensure (PP_TYPE_SIZE_FORM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/variant-dialog.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, size_cb);
  gtk_widget_class_bind_template_callback (widget_class, another_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
  gtk_widget_class_bind_template_callback (widget_class, accept_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_variant_dialog_init (PpVariantDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_to_make (PpVariantDialog *self,
              const PpPanel   *panel)
{
  g_autofree char *list = pp_variant_list_to_make (panel);

  pp_lines_add (self->to_make, list != NULL ? list : _("None: the tray holds all that it needs."));
}

/* As it is, to begin with. */
static void
show_size (PpVariantDialog *self,
           const PpPanel   *panel)
{
  PpBox glass = pp_background_get_box (panel->background);

  pp_size_form_set (self->size, panel->units, pp_box_width (glass), pp_box_height (glass));
}

PpVariantDialog *
pp_variant_dialog_new (GtkWindow  *parent,
                       PpDocument *document,
                       gboolean    is_size)
{
  PpVariantDialog *self;
  const PpPanel *panel;

  g_return_val_if_fail (PP_IS_DOCUMENT (document), NULL);

  self = g_object_new (PP_TYPE_VARIANT_DIALOG, "transient-for", parent, "title",
                       is_size ? _("Fit to another size") : _("Another like this"), NULL);
  panel = pp_document_get_panel (document);
  self->document = g_object_ref (document);
  self->maker = pp_variant_maker_new (panel, is_size);
  g_signal_connect (self->maker, "made", G_CALLBACK (made_cb), self);
  gtk_window_set_default_size (GTK_WINDOW (self), -1,
                               (int) (HEIGHT_EM * pp_em_of (GTK_WIDGET (self))));
  gtk_widget_set_visible (GTK_WIDGET (self->size), is_size);
  gtk_widget_set_visible (self->make, !is_size);
  gtk_widget_set_visible (GTK_WIDGET (self->to_make), !is_size);
  show_size (self, panel);
  show_to_make (self, panel);
  show (self);
  gtk_widget_grab_focus (is_size ? GTK_WIDGET (self->size) : self->accept);
  g_signal_connect (document, "drawn", G_CALLBACK (drawn_cb), self);
  return self;
}

const PpPanel *
pp_variant_dialog_get_panel (PpVariantDialog *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_DIALOG (self), NULL);
  return pp_variant_maker_get_panel (self->maker);
}
