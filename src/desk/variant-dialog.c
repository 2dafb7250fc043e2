/* variant-dialog.c: another panel like this, or this one on glass of another size, to look at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/variant-dialog.h"

#include "desk/clock.h"
#include "desk/em.h"
#include "desk/lines.h"
#include "desk/panel-picture.h"
#include "desk/size-form.h"
#include "desk/variant.h"
#include "panel/i18n.h"

#define PICTURE_EM 40 /* side of the picture where there is room; at least a third of that */
#define HEIGHT_EM 50  /* of the window: what is said comes in later */
#define LOOK_MSEC 100
#define MOST_LINES 6 /* of one kind; the glass shows the rest */

/* An arrangement that was made. */
typedef struct
{
  PpPanel  *variant;
  PpAdvice *advice;  /* NULL: it needed none */
} Made;

struct _PpVariantDialog
{
  GtkWindow       parent_instance;
  PpDocument     *document;
  const PpPanel  *panel;    /* that all this is made from */
  PpVariantWish   wish;
  GPtrArray      *made;     /* Made, by the number of the arrangement, of the size wished for */
  PpPanel        *variant;  /* that is shown, while it is being put right */
  GError         *fault;    /* why there is none of the size wished for; or NULL */
  PpWork         *work;     /* NULL: nothing is being searched */
  guint           timer;
  GtkWidget      *pressed;  /* that goes on with the search, where the focus comes back to */

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

static void
made_free (gpointer data)
{
  Made *self = data;

  pp_panel_unref (self->variant);
  g_clear_pointer (&self->advice, pp_advice_free);
  g_free (self);
}

static const Made *
get_made (PpVariantDialog *self)
{
  return self->wish.number < self->made->len ? g_ptr_array_index (self->made, self->wish.number)
                                             : NULL;
}

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
  PpGallery *gallery = pp_document_get_gallery (self->document);
  g_autoptr (PpScene) scene = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autoptr (GdkPaintable) paintable = NULL;

  gtk_widget_set_size_request (GTK_WIDGET (self->picture), side / 3, side / 3);
  if (self->fault != NULL)
    gtk_picture_set_paintable (self->picture, NULL);
  if (gallery == NULL || self->fault != NULL)
    return;
  scene = pp_scene_new (pp_variant_dialog_get_panel (self), NULL);
  texture = pp_panel_picture_new (scene, gallery, side * 2, NULL, NULL);
  paintable = pp_panel_picture_halve (texture);
  gtk_picture_set_paintable (self->picture, paintable);
}

/* Glass of another size is asked for, and none was told yet. */
static gboolean
is_open (PpVariantDialog *self)
{
  return self->wish.is_size && !pp_variant_is_resized (self->panel, &self->wish);
}

static void
show (PpVariantDialog *self)
{
  const Made *made = get_made (self);
  gboolean is_ready = made != NULL && !is_open (self);
  g_autofree char *sum = NULL;

  if (is_open (self))
    sum = g_strdup (_("Choose the size of the glass that you have."));
  else if (self->fault != NULL)
    sum = g_strdup (self->fault->message);
  else
    sum = pp_variant_describe (self->panel, &self->wish, made != NULL ? made->variant
                                                                      : self->variant);
  gtk_label_set_text (self->sum, sum);
  gtk_widget_set_visible (self->searching, self->work != NULL);
  gtk_widget_set_sensitive (self->accept, is_ready);
  gtk_widget_set_sensitive (self->another, is_ready);
  gtk_widget_set_sensitive (self->back, is_ready && self->wish.number > 0);
  show_advice (self, made != NULL ? made->advice : NULL);
  draw (self);
}

static void
end_search (PpVariantDialog *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_pointer (&self->work, pp_work_unref);
  g_clear_pointer (&self->variant, pp_panel_unref);
}

static void
give_up_search (PpVariantDialog *self)
{
  if (self->work != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->work));
  end_search (self);
}

/* Takes over `variant` and `advice`. */
static void
keep (PpVariantDialog *self,
      PpPanel         *variant,
      PpAdvice        *advice)
{
  Made *made = g_new (Made, 1);

  *made = (Made) { variant, advice };
  g_ptr_array_add (self->made, made);
}

/* The main thread's, but for variant and work. */
typedef struct
{
  PpVariantDialog *dialog;
  PpPanel         *variant;
  PpWork          *work;
} Search;

static void
search_free (Search *self)
{
  g_object_unref (self->dialog);
  pp_panel_unref (self->variant);
  pp_work_unref (self->work);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Search, search_free)

static void
search_in_thread (GTask        *task,
                  gpointer      source,
                  gpointer      data,
                  GCancellable *cancellable)
{
  const Search *search = data;

  g_task_return_pointer (task, pp_variant_put_right (search->variant, search->work),
                         (GDestroyNotify) pp_advice_free);
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

/* A search that was given up comes to its end too, and is then no longer the dialog's. */
static void
searched_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (Search) search = data;
  g_autoptr (PpAdvice) advice = g_task_propagate_pointer (G_TASK (result), NULL);
  PpVariantDialog *self = search->dialog;

  if (self->work != search->work)
    return;
  end_search (self);
  keep (self, pp_panel_ref (search->variant), g_steal_pointer (&advice));
  show (self);
  return_focus (self);
}

static gboolean
look_cb (gpointer data)
{
  PpVariantDialog *self = data;

  gtk_progress_bar_set_fraction (self->bar, pp_work_get_done (self->work));
  return G_SOURCE_CONTINUE;
}

static void
begin_search (PpVariantDialog *self)
{
  Search *search = g_new (Search, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, searched_cb, search);

  self->work = pp_work_new ();
  self->timer = g_timeout_add (LOOK_MSEC, look_cb, self);
  gtk_progress_bar_set_fraction (self->bar, 0);
  *search = (Search) { g_object_ref (self), pp_panel_ref (self->variant),
                       pp_work_ref (self->work) };
  g_task_set_task_data (task, search, NULL);
  g_task_run_in_thread (task, search_in_thread);
}

/* NULL with `fault` set: on much larger glass what lies beside it may come to lie too far out.
 * (transfer full) (nullable) */
static PpPanel *
make_variant (PpVariantDialog *self)
{
  g_autofree char *today = pp_clock_today ();

  return pp_variant_new (self->panel, &self->wish, today, &self->fault);
}

/* What is wished for, made anew unless it was made before. The panel itself is right or wrong as
 * it is: nobody asked to have it put right. */
static void
make (PpVariantDialog *self)
{
  PpPanel *variant;

  give_up_search (self);
  g_clear_error (&self->fault);
  if (get_made (self) == NULL)
    {
      variant = make_variant (self);
      if (variant == NULL)
        ; /* show() tells why */
      else if (self->wish.number == 0 && !pp_variant_is_resized (self->panel, &self->wish))
        keep (self, variant, NULL);
      else
        {
          self->variant = variant;
          begin_search (self);
        }
    }
  show (self);
}

static void
size_cb (PpSizeForm      *form,
         PpVariantDialog *self)
{
  self->wish.width = pp_size_form_get_width (form);
  self->wish.height = pp_size_form_get_height (form);
  self->wish.number = 0;
  self->pressed = NULL;
  g_ptr_array_set_size (self->made, 0);
  make (self);
}

static void
go_to (PpVariantDialog *self,
       guint            number,
       GtkWidget       *pressed)
{
  self->wish.number = number;
  self->pressed = pressed;
  make (self);
}

static void
another_cb (GtkButton       *button,
            PpVariantDialog *self)
{
  if (!pp_size_form_is_wrong (self->size))
    go_to (self, self->wish.number + 1, self->another);
}

static void
back_cb (GtkButton       *button,
         PpVariantDialog *self)
{
  go_to (self, self->wish.number - 1, self->back);
}

static void
stop_cb (GtkButton       *button,
         PpVariantDialog *self)
{
  if (self->work != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->work));
}

static void
accept_cb (GtkButton       *button,
           PpVariantDialog *self)
{
  if (!pp_size_form_is_wrong (self->size) && get_made (self) != NULL)
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

/* The search holds the dialog, so that closing it does not dispose of it. */
static void
pp_variant_dialog_unmap (GtkWidget *widget)
{
  give_up_search (PP_VARIANT_DIALOG (widget));
  GTK_WIDGET_CLASS (pp_variant_dialog_parent_class)->unmap (widget);
}

static void
pp_variant_dialog_dispose (GObject *object)
{
  PpVariantDialog *self = PP_VARIANT_DIALOG (object);

  give_up_search (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_VARIANT_DIALOG);
  G_OBJECT_CLASS (pp_variant_dialog_parent_class)->dispose (object);
}

static void
pp_variant_dialog_finalize (GObject *object)
{
  PpVariantDialog *self = PP_VARIANT_DIALOG (object);

  g_ptr_array_unref (self->made);
  g_clear_error (&self->fault);
  g_clear_pointer (&self->panel, pp_panel_unref);
  G_OBJECT_CLASS (pp_variant_dialog_parent_class)->finalize (object);
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
  G_OBJECT_CLASS (klass)->finalize = pp_variant_dialog_finalize;
  widget_class->unmap = pp_variant_dialog_unmap;
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
  self->made = g_ptr_array_new_with_free_func (made_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_to_make (PpVariantDialog *self)
{
  g_autofree char *list = pp_variant_list_to_make (self->panel);

  gtk_widget_set_visible (self->make, !self->wish.is_size);
  gtk_widget_set_visible (GTK_WIDGET (self->to_make), !self->wish.is_size);
  pp_lines_add (self->to_make, list != NULL ? list : _("None: the tray holds all that it needs."));
}

/* As it is, to begin with. */
static void
show_size (PpVariantDialog *self)
{
  PpBox glass = pp_background_get_box (self->panel->background);

  pp_size_form_set (self->size, self->panel->units, pp_box_width (glass), pp_box_height (glass));
}

PpVariantDialog *
pp_variant_dialog_new (GtkWindow  *parent,
                       PpDocument *document,
                       gboolean    is_size)
{
  PpVariantDialog *self;

  g_return_val_if_fail (PP_IS_DOCUMENT (document), NULL);

  self = g_object_new (PP_TYPE_VARIANT_DIALOG, "transient-for", parent, "title",
                       is_size ? _("Fit to another size") : _("Another like this"), NULL);
  self->document = g_object_ref (document);
  self->panel = pp_panel_ref (pp_document_get_panel (document));
  self->wish = pp_variant_wish (self->panel);
  self->wish.is_size = is_size;
  gtk_window_set_default_size (GTK_WINDOW (self), -1,
                               (int) (HEIGHT_EM * pp_em_of (GTK_WIDGET (self))));
  gtk_widget_set_visible (GTK_WIDGET (self->size), is_size);
  show_size (self);
  show_to_make (self);
  make (self);
  gtk_widget_grab_focus (is_size ? GTK_WIDGET (self->size) : self->accept);
  g_signal_connect (document, "drawn", G_CALLBACK (drawn_cb), self);
  return self;
}

const PpPanel *
pp_variant_dialog_get_panel (PpVariantDialog *self)
{
  const Made *made;

  g_return_val_if_fail (PP_IS_VARIANT_DIALOG (self), NULL);

  made = get_made (self);
  if (made == NULL)
    return self->variant;
  return made->advice != NULL ? made->advice->panel : made->variant;
}
