/* clipboard.c: copied pieces on the system's clipboard.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever stands on the clipboard was put there by any program: it is read with an end to its
 * length, and then like a file.
 */
#include "config.h"

#include "desk/clipboard.h"

#include "desk/edit-acts.h"
#include "file/json-scan.h"
#include "file/panel-read.h"
#include "file/panel-write.h"
#include "panel/clip.h"
#include "panel/i18n.h"
#include "panel/tolerance.h"
#include "shape/place.h"

#define CHUNK 65536 /* bytes at a time */

void
pp_clipboard_copy (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  g_autoptr (PpPanel) clip = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GdkContentProvider) content = NULL;

  if (document == NULL || pp_document_get_chosen (document) != PP_CHOSEN_PLACEMENTS)
    return;
  clip = pp_clip_new (pp_document_get_panel (document), pp_document_get_chosen_ids (document),
                      NULL);
  bytes = g_string_free_to_bytes (pp_panel_write (clip));
  content = gdk_content_provider_new_for_bytes (PP_CLIPBOARD_MIME, bytes);
  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (window)), content);
}

/* What is being read, for where. */
typedef struct
{
  PpWindow     *window;   /* referenced */
  PpDocument   *document; /* referenced; the window may have another one meanwhile */
  gboolean      at_pointer;
  PpPoint       pointer;  /* mm */
  GInputStream *stream;
  GByteArray   *text;
} Paste;

static void
paste_free (Paste *self)
{
  g_clear_object (&self->stream);
  g_byte_array_unref (self->text);
  g_object_unref (self->document);
  g_object_unref (self->window);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Paste, paste_free)

static PpBox
get_clip_box (const PpPanel *clip)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) ids = NULL;

  for (guint i = 0; i < clip->placements->len; i++)
    g_strv_builder_add (builder, pp_panel_placement (clip, i)->id);
  ids = g_strv_builder_end (builder);
  return pp_place_box (clip, (const char * const *) ids);
}

/* Whether a piece lies there, so that a copy would hide it or be hidden. */
static gboolean
is_occupied (const PpPanel     *panel,
             const PpPlacement *placement,
             PpPoint            by)
{
  for (guint i = 0; i < panel->placements->len; i++)
    {
      const PpPlacement *other = pp_panel_placement (panel, i);

      if (fabs (other->x - placement->x - by.x) < PP_TIE
          && fabs (other->y - placement->y - by.y) < PP_TIE)
        return TRUE;
    }
  return FALSE;
}

/* How far the clip moves from where it was copied. */
static PpPoint
choose_place (const Paste   *self,
              const PpPanel *panel,
              const PpPanel *clip)
{
  PpBox box = get_clip_box (clip);
  PpBox glass = pp_background_get_box (panel->background);
  PpPoint middle = pp_box_middle (box);
  double shift = pp_edit_acts_get_shift (panel);
  PpPoint by = { 0, 0 };

  if (self->at_pointer)
    by = (PpPoint) { self->pointer.x - middle.x, self->pointer.y - middle.y };
  else if (!pp_box_meets (glass, pp_box_add_point (pp_box_empty (), middle)))
    by = (PpPoint) { pp_box_middle (glass).x - middle.x, pp_box_middle (glass).y - middle.y };
  while (is_occupied (panel, pp_panel_placement (clip, 0), by))
    by = (PpPoint) { by.x + shift, by.y + shift };
  return by;
}

static void
put_down (Paste         *self,
          const PpPanel *clip)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  PpPoint by = choose_place (self, panel, clip);
  g_auto (GStrv) ids = NULL;
  GError *error = NULL;
  PpPanel *next = pp_edit_paste (panel, clip, by.x, by.y, &ids, &error);
  g_autofree char *label = NULL;

  if (next != NULL)
    label = pp_edit_words_act (PP_ACT_PASTE, next, (const char * const *) ids);
  if (pp_edit_acts_take (self->document, next, error, label, NULL))
    pp_document_choose (self->document, PP_CHOSEN_PLACEMENTS, (const char * const *) ids);
}

static void
tell_foreign (Paste *self)
{
  pp_window_tell (self->window, _("What was copied last is no piece of a panel. Copy pieces first, "
                                  "here or in another window."));
}

static void
finish (Paste *self)
{
  g_autoptr (GBytes) bytes = g_bytes_new (self->text->data, self->text->len);
  g_autoptr (PpPanel) clip = pp_panel_read (bytes, NULL);

  if (pp_window_get_document (self->window) != self->document)
    return;
  if (clip == NULL)
    pp_window_tell (self->window, _("What was copied arrived damaged, so nothing was pasted. Copy "
                                    "it once more."));
  else if (clip->placements->len == 0)
    tell_foreign (self);
  else
    put_down (self, clip);
}

static void read_on (Paste *self);

static void
chunk_cb (GObject      *stream,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (Paste) self = data;
  g_autoptr (GBytes) chunk = g_input_stream_read_bytes_finish (G_INPUT_STREAM (stream), result,
                                                               NULL);

  if (chunk == NULL || self->text->len + g_bytes_get_size (chunk) > PP_JSON_MAX_BYTES)
    tell_foreign (self);
  else if (g_bytes_get_size (chunk) == 0)
    finish (self);
  else
    {
      g_byte_array_append (self->text, g_bytes_get_data (chunk, NULL),
                           (guint) g_bytes_get_size (chunk));
      read_on (g_steal_pointer (&self));
    }
}

static void
read_on (Paste *self)
{
  g_input_stream_read_bytes_async (self->stream, CHUNK, G_PRIORITY_DEFAULT, NULL, chunk_cb, self);
}

static void
opened_cb (GObject      *clipboard,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (Paste) self = data;

  self->stream = gdk_clipboard_read_finish (GDK_CLIPBOARD (clipboard), result, NULL, NULL);
  if (self->stream == NULL)
    tell_foreign (self);
  else
    read_on (g_steal_pointer (&self));
}

void
pp_clipboard_paste (PpWindow *window)
{
  static const char *types[] = { PP_CLIPBOARD_MIME, NULL };
  GtkWidget *canvas = GTK_WIDGET (pp_window_get_canvas (window));
  PpDocument *document = pp_window_get_document (window);
  Paste *self;

  if (document == NULL)
    return;
  self = g_new0 (Paste, 1);
  self->window = g_object_ref (window);
  self->document = g_object_ref (document);
  self->text = g_byte_array_new ();
  self->at_pointer = (gtk_widget_get_state_flags (canvas) & GTK_STATE_FLAG_PRELIGHT) != 0;
  self->pointer = pp_canvas_get_pointer (PP_CANVAS (canvas));
  gdk_clipboard_read_async (gtk_widget_get_clipboard (GTK_WIDGET (window)), types,
                            G_PRIORITY_DEFAULT, NULL, opened_cb, self);
}
