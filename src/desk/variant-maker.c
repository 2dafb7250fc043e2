/* variant-maker.c: makes arrangements of a panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/variant-maker.h"

#include "desk/clock.h"
#include "desk/variant.h"

/* An arrangement that was made. */
typedef struct
{
  PpPanel  *variant;
  PpAdvice *advice;  /* NULL: it needed none */
} Made;

struct _PpVariantMaker
{
  GObject        parent_instance;
  const PpPanel *panel;   /* that all this is made from */
  PpVariantWish  wish;
  GPtrArray     *made;    /* Made, by the number of the arrangement, of the size wished for */
  PpPanel       *variant; /* that is being put right, or NULL */
  GError        *fault;   /* why there is none of the size wished for; or NULL */
  PpWork        *work;    /* NULL: nothing is being searched */
};

G_DEFINE_FINAL_TYPE (PpVariantMaker, pp_variant_maker, G_TYPE_OBJECT)

static guint made_signal;

static void
made_free (gpointer data)
{
  Made *self = data;

  pp_panel_unref (self->variant);
  g_clear_pointer (&self->advice, pp_advice_free);
  g_free (self);
}

static const Made *
get_made (PpVariantMaker *self)
{
  return self->wish.number < self->made->len ? g_ptr_array_index (self->made, self->wish.number)
                                             : NULL;
}

/* Takes over `variant` and `advice`. */
static void
keep (PpVariantMaker *self,
      PpPanel        *variant,
      PpAdvice       *advice)
{
  Made *made = g_new (Made, 1);

  *made = (Made) { variant, advice };
  g_ptr_array_add (self->made, made);
}

/* The main thread's, but for variant and work. */
typedef struct
{
  PpVariantMaker *maker;
  PpPanel        *variant;
  PpWork         *work;
} Search;

static void
search_free (Search *self)
{
  g_object_unref (self->maker);
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

static void
end_search (PpVariantMaker *self)
{
  g_clear_pointer (&self->work, pp_work_unref);
  g_clear_pointer (&self->variant, pp_panel_unref);
}

/* A search that was given up comes to its end too, and is then no longer the maker's. */
static void
searched_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (Search) search = data;
  g_autoptr (PpAdvice) advice = g_task_propagate_pointer (G_TASK (result), NULL);
  PpVariantMaker *self = search->maker;

  if (self->work != search->work)
    return;
  end_search (self);
  keep (self, pp_panel_ref (search->variant), g_steal_pointer (&advice));
  g_signal_emit (self, made_signal, 0);
}

static void
begin_search (PpVariantMaker *self)
{
  Search *search = g_new (Search, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, searched_cb, search);

  self->work = pp_work_new ();
  *search = (Search) { g_object_ref (self), pp_panel_ref (self->variant),
                       pp_work_ref (self->work) };
  g_task_set_task_data (task, search, NULL);
  g_task_run_in_thread (task, search_in_thread);
}

/* What is wished for, made anew unless it was made before. The panel itself is right or wrong as
 * it is: nobody asked to have it put right. On much larger glass what lies beside it may come to
 * lie too far out. */
static void
make (PpVariantMaker *self)
{
  g_autofree char *today = pp_clock_today ();
  g_autoptr (PpPanel) variant = NULL;

  pp_variant_maker_give_up (self);
  g_clear_error (&self->fault);
  if (get_made (self) != NULL)
    return;
  variant = pp_variant_new (self->panel, &self->wish, today, &self->fault);
  if (variant == NULL)
    return;
  if (self->wish.number == 0 && !pp_variant_is_resized (self->panel, &self->wish))
    {
      keep (self, g_steal_pointer (&variant), NULL);
      return;
    }
  self->variant = g_steal_pointer (&variant);
  begin_search (self);
}

static void
pp_variant_maker_finalize (GObject *object)
{
  PpVariantMaker *self = PP_VARIANT_MAKER (object);

  g_ptr_array_unref (self->made);
  g_clear_error (&self->fault);
  g_clear_pointer (&self->panel, pp_panel_unref);
  G_OBJECT_CLASS (pp_variant_maker_parent_class)->finalize (object);
}

static void
pp_variant_maker_class_init (PpVariantMakerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_variant_maker_finalize;
  made_signal = g_signal_new ("made", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 0);
}

static void
pp_variant_maker_init (PpVariantMaker *self)
{
  self->made = g_ptr_array_new_with_free_func (made_free);
}

PpVariantMaker *
pp_variant_maker_new (const PpPanel *panel,
                      gboolean       is_size)
{
  PpVariantMaker *self;

  g_return_val_if_fail (panel != NULL, NULL);

  self = g_object_new (PP_TYPE_VARIANT_MAKER, NULL);
  self->panel = pp_panel_ref (panel);
  self->wish = pp_variant_wish (panel);
  self->wish.is_size = is_size;
  make (self);
  return self;
}

void
pp_variant_maker_set_size (PpVariantMaker *self,
                           double          width,
                           double          height)
{
  g_return_if_fail (PP_IS_VARIANT_MAKER (self));

  self->wish.width = width;
  self->wish.height = height;
  self->wish.number = 0;
  g_ptr_array_set_size (self->made, 0);
  make (self);
}

void
pp_variant_maker_go_to (PpVariantMaker *self,
                        guint           number)
{
  g_return_if_fail (PP_IS_VARIANT_MAKER (self));

  self->wish.number = number;
  make (self);
}

void
pp_variant_maker_stop (PpVariantMaker *self)
{
  g_return_if_fail (PP_IS_VARIANT_MAKER (self));

  if (self->work != NULL)
    g_cancellable_cancel (pp_work_get_cancellable (self->work));
}

void
pp_variant_maker_give_up (PpVariantMaker *self)
{
  g_return_if_fail (PP_IS_VARIANT_MAKER (self));

  pp_variant_maker_stop (self);
  end_search (self);
}

guint
pp_variant_maker_get_number (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), 0);
  return self->wish.number;
}

gboolean
pp_variant_maker_needs_size (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), FALSE);
  return self->wish.is_size && !pp_variant_is_resized (self->panel, &self->wish);
}

gboolean
pp_variant_maker_is_made (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), FALSE);
  return get_made (self) != NULL;
}

gboolean
pp_variant_maker_is_searching (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), FALSE);
  return self->work != NULL;
}

double
pp_variant_maker_get_done (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), 0);
  return self->work != NULL ? pp_work_get_done (self->work) : 0;
}

const PpPanel *
pp_variant_maker_get_panel (PpVariantMaker *self)
{
  const Made *made;

  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), NULL);

  made = get_made (self);
  if (made == NULL)
    return self->variant;
  return made->advice != NULL ? made->advice->panel : made->variant;
}

const PpAdvice *
pp_variant_maker_get_advice (PpVariantMaker *self)
{
  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), NULL);
  return get_made (self) != NULL ? get_made (self)->advice : NULL;
}

char *
pp_variant_maker_describe (PpVariantMaker *self)
{
  const Made *made;

  g_return_val_if_fail (PP_IS_VARIANT_MAKER (self), NULL);

  made = get_made (self);
  if (self->fault != NULL)
    return g_strdup (self->fault->message);
  return pp_variant_describe (self->panel, &self->wish, made != NULL ? made->variant
                                                                     : self->variant);
}
