/* document.c: the panel in hand: its history and its file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/document-private.h"

#include "desk/file-words.h"
#include "panel/i18n.h"

G_DEFINE_FINAL_TYPE (PpDocument, pp_document, G_TYPE_OBJECT)

guint pp_document_signals[PP_DOCUMENT_N_SIGNALS];

enum
{
  PROP_SAVED = 1,
  PROP_FILE,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* After any change of the present panel. */
static void
follow (PpDocument    *self,
        const PpPanel *before,
        gboolean       was_saved)
{
  const PpPanel *panel = pp_document_get_panel (self);
  gboolean pruned = pp_document_prune_chosen (self);

  if (panel->tray != before->tray)
    pp_document_judge_art (self);
  pp_checker_ask (self->checker, panel);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHANGED], 0);
  if (pruned)
    g_signal_emit (self, pp_document_signals[PP_DOCUMENT_CHOSEN], 0);
  if (was_saved != pp_document_is_saved (self))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

static void
pp_document_get_property (GObject    *object,
                          guint       prop_id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  PpDocument *self = PP_DOCUMENT (object);

  switch (prop_id)
    {
    case PROP_SAVED:
      g_value_set_boolean (value, pp_document_is_saved (self));
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
pp_document_dispose (GObject *object)
{
  PpDocument *self = PP_DOCUMENT (object);

  pp_document_answers_stop (self);
  G_OBJECT_CLASS (pp_document_parent_class)->dispose (object);
}

static void
pp_document_finalize (GObject *object)
{
  PpDocument *self = PP_DOCUMENT (object);

  pp_document_answers_clear (self);
  g_clear_pointer (&self->scene, pp_scene_unref);
  g_clear_pointer (&self->history, pp_history_free);
  g_clear_pointer (&self->saved, pp_panel_unref);
  g_clear_pointer (&self->chosen_ids, g_strfreev);
  g_clear_object (&self->file);
  G_OBJECT_CLASS (pp_document_parent_class)->finalize (object);
}

static void
pp_document_class_init (PpDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  static const char * const names[] = { "changed", "chosen", "checked", "drawn" };
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = pp_document_get_property;
  object_class->dispose = pp_document_dispose;
  object_class->finalize = pp_document_finalize;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    pp_document_signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                           0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  pp_document_signals[PP_DOCUMENT_REFUSED]
    = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 1, G_TYPE_STRING);
  props[PROP_SAVED] = g_param_spec_boolean ("saved", NULL, NULL, TRUE, flags);
  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
pp_document_init (PpDocument *self)
{
  self->chosen_ids = g_new0 (char *, 1);
  pp_document_answers_init (self);
}

PpDocument *
pp_document_new (const PpPanel *panel,
                 GFile         *file)
{
  PpDocument *self;

  g_return_val_if_fail (panel != NULL, NULL);

  self = g_object_new (PP_TYPE_DOCUMENT, NULL);
  self->history = pp_history_new (panel);
  self->saved = pp_panel_ref (panel);
  g_set_object (&self->file, file);
  pp_document_judge_art (self);
  pp_checker_ask (self->checker, panel);
  return self;
}

const PpPanel *
pp_document_get_panel (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_present (self->history);
}

PpScene *
pp_document_get_scene (PpDocument *self)
{
  PpScene *next;

  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);

  if (self->scene != NULL && self->scene->panel == pp_document_get_panel (self))
    return self->scene;
  next = pp_scene_new (pp_document_get_panel (self), self->scene);
  g_clear_pointer (&self->scene, pp_scene_unref);
  self->scene = next;
  return next;
}

/* (transfer full) (nullable) */
static void
refuse (PpDocument *self,
        GError     *error)
{
  pp_document_refuse (self, error != NULL ? error->message : _("That cannot be done."));
  g_clear_error (&error);
}

gboolean
pp_document_take (PpDocument *self,
                  PpPanel    *next,
                  GError     *error,
                  const char *label,
                  const char *merge_key)
{
  g_autoptr (PpPanel) before = NULL;
  gboolean was_saved;

  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);

  if (next == NULL)
    {
      refuse (self, error);
      return FALSE;
    }
  before = pp_panel_ref (pp_document_get_panel (self));
  was_saved = pp_document_is_saved (self);
  if (next != before)
    {
      pp_history_push (self->history, next, label, merge_key);
      follow (self, before, was_saved);
    }
  pp_panel_unref (next);
  return TRUE;
}

void
pp_document_refuse (PpDocument *self,
                    const char *sentence)
{
  g_return_if_fail (PP_IS_DOCUMENT (self) && sentence != NULL);
  g_signal_emit (self, pp_document_signals[PP_DOCUMENT_REFUSED], 0, sentence);
}

gboolean
pp_document_record (PpDocument *self,
                    PpPanel    *next,
                    GError     *error)
{
  g_autoptr (PpPanel) before = NULL;
  gboolean was_saved;

  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);

  if (next == NULL)
    {
      refuse (self, error);
      return FALSE;
    }
  before = pp_panel_ref (pp_document_get_panel (self));
  was_saved = pp_document_is_saved (self);
  pp_history_barrier (self->history, next);
  follow (self, before, was_saved);
  pp_panel_unref (next);
  return TRUE;
}

void
pp_document_seal (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  pp_history_seal (self->history);
}

static void
step (PpDocument *self,
      gboolean  (*walk) (PpHistory *))
{
  g_autoptr (PpPanel) before = pp_panel_ref (pp_document_get_panel (self));
  gboolean was_saved = pp_document_is_saved (self);

  if (walk (self->history))
    follow (self, before, was_saved);
}

void
pp_document_undo (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_undo);
}

void
pp_document_take_back (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_drop);
}

void
pp_document_redo (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));
  step (self, pp_history_redo);
}

const char *
pp_document_get_undo (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_undo (self->history);
}

const char *
pp_document_get_redo (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return pp_history_get_redo (self->history);
}

GFile *
pp_document_get_file (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);
  return self->file;
}

gboolean
pp_document_is_saved (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), FALSE);
  return self->saved == pp_document_get_panel (self);
}

void
pp_document_set_saved (PpDocument    *self,
                       const PpPanel *panel,
                       GFile         *file)
{
  const PpPanel *before;

  g_return_if_fail (PP_IS_DOCUMENT (self) && panel != NULL);

  before = self->saved;
  self->saved = pp_panel_ref (panel);
  g_clear_pointer (&before, pp_panel_unref);
  g_set_object (&self->file, file);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

void
pp_document_set_lost (PpDocument *self)
{
  g_return_if_fail (PP_IS_DOCUMENT (self));

  g_clear_pointer (&self->saved, pp_panel_unref);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVED]);
}

char *
pp_document_dup_title (PpDocument *self)
{
  g_return_val_if_fail (PP_IS_DOCUMENT (self), NULL);

  if (*pp_document_get_panel (self)->title != '\0')
    return g_strdup (pp_document_get_panel (self)->title);
  if (self->file != NULL)
    return pp_file_name_show_bare (self->file);
  return g_strdup (_("Untitled panel"));
}
