/* put-right.c: the actions that look for a better panel.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The search is one of steps, so that it finds here what it finds elsewhere; time only ends it.
 */
#include "config.h"

#include "desk/put-right.h"

#include "advise/curable.h"
#include "desk/advice-dialog.h"
#include "desk/advice-search.h"
#include "desk/pages.h"
#include "panel/i18n.h"

#define SECONDS_ONE 8.0
#define SECONDS_ALL 15.0

/* The one finding that is to be put right. */
typedef struct
{
  char  *code;
  char **about;
} Wish;

static void
wish_free (gpointer data)
{
  Wish *self = data;

  g_free (self->code);
  g_strfreev (self->about);
  g_free (self);
}

static void
progress_cb (const PpAdviceProgress *progress,
             gpointer                work)
{
  pp_work_report (progress->share, work);
}

static PpAdvice *
find_one (const PpPanel *panel,
          PpWork        *work,
          gconstpointer  data)
{
  const PpSearchLimits limits = { .seconds = SECONDS_ONE };
  const Wish *wish = data;

  return pp_advise_one (panel, wish->code, (const char * const *) wish->about, &limits,
                        pp_work_get_cancellable (work), progress_cb, work);
}

static PpAdvice *
find_all (const PpPanel *panel,
          PpWork        *work,
          gconstpointer  data)
{
  const PpSearchLimits limits = { .seconds = SECONDS_ALL };

  return pp_advise_all (panel, &limits, pp_work_get_cancellable (work), progress_cb, work);
}

/* "Dock leaf 9 mm to the left, turned by 20°; the wire 12 mm longer." */
static char *
say_changes (const PpAdvice *advice)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < advice->changes->len; i++)
    {
      const PpChange *change = g_ptr_array_index (advice->changes, i);

      /* Translators: between the changes that make up one sentence. */
      g_string_append_printf (text, "%s%s", i > 0 ? C_("between changes", "; ") : "", change->text);
    }
  /* Translators: a change, "the wire 12 mm longer", as a sentence of its own. */
  return g_strdup_printf (_("%s."), text->str);
}

static void
take (PpWindow       *window,
      const PpAdvice *advice,
      const char     *label)
{
  pp_document_take (pp_window_get_document (window), pp_panel_ref (advice->panel), NULL, label,
                    NULL);
}

static void
take_one (PpWindow      *window,
          PpAdvice      *found,
          gboolean       is_stopped,
          gconstpointer  data)
{
  g_autoptr (PpAdvice) advice = found;
  g_autofree char *words = NULL;

  if (advice->changed)
    {
      words = say_changes (advice);
      take (window, advice, _("Put right"));
      pp_window_tell (window, words);
    }
  else if (is_stopped)
    pp_window_tell (window, _("Stopped: nothing was changed."));
  else
    pp_window_tell (window, _("No small change was found that puts this right without harm "
                              "elsewhere. Nothing was changed."));
}

static void
accepted_cb (PpAdviceDialog *dialog,
             PpWindow       *window)
{
  const PpAdvice *advice = pp_advice_dialog_get_advice (dialog);
  guint n = advice->changes->len;
  g_autofree char *words = g_strdup_printf (ngettext ("%u thing was changed. Undo takes it back.",
                                                      "%u things were changed. Undo takes them "
                                                      "all back.", n), n);

  take (window, advice, _("Put all right"));
  pp_window_tell (window, words);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

static void
show_all (PpWindow      *window,
          PpAdvice      *advice,
          gboolean       is_stopped,
          gconstpointer  data)
{
  PpAdviceDialog *dialog;

  if (!advice->changed)
    {
      pp_window_tell (window, _("Nothing better was found. Nothing was changed."));
      pp_advice_free (advice);
      return;
    }
  dialog = pp_advice_dialog_new (GTK_WINDOW (window), advice,
                                 pp_document_get_gallery (pp_window_get_document (window)));
  g_signal_connect_object (dialog, "accepted", G_CALLBACK (accepted_cb), window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
put_right_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       window)
{
  Wish *wish = g_new (Wish, 1);
  const PpAdviceSearch search = {
    .doing = _("Looking for the smallest change that puts this right."),
    .outdated = _("The panel was changed meanwhile. Nothing was put right."),
    .find = find_one, .done = take_one, .data = wish, .free_data = wish_free,
  };

  g_variant_get (parameter, "(s^as)", &wish->code, &wish->about);
  pp_advice_search_run (window, &search);
}

static void
put_all_right_cb (GSimpleAction *action,
                  GVariant      *parameter,
                  gpointer       window)
{
  const PpAdviceSearch search = {
    .doing = _("Looking for a better panel. Stop when you like: the best that was found by then is "
               "shown, and nothing is changed before you say so."),
    .outdated = _("The panel was changed meanwhile. Nothing was put right."),
    .find = find_all, .done = show_all,
  };

  pp_advice_search_run (window, &search);
}

static gboolean
has_curable (PpDocument *document)
{
  GPtrArray *findings = pp_document_get_findings (document);

  for (guint i = 0; i < findings->len; i++)
    if (pp_advise_can_cure (((const PpFinding *) g_ptr_array_index (findings, i))->code))
      return TRUE;
  return FALSE;
}

static void
update (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  gboolean is_dry_run = g_strcmp0 (pp_window_get_page_name (window), PP_PAGE_DRY_RUN) == 0;
  GAction *one = g_action_map_lookup_action (G_ACTION_MAP (window), "put-right");
  GAction *all = g_action_map_lookup_action (G_ACTION_MAP (window), "put-all-right");

  g_simple_action_set_enabled (G_SIMPLE_ACTION (one), is_dry_run);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (all), is_dry_run && has_curable (document));
}

static void
checked_cb (PpDocument *document,
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

void
pp_put_right_add (PpWindow *window)
{
  static const GActionEntry entries[] = {
    { "put-right", put_right_cb, "(sas)" },
    { "put-all-right", put_all_right_cb },
  };
  GSignalGroup *signals = g_signal_group_new (PP_TYPE_DOCUMENT);

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_group_connect (signals, "checked", G_CALLBACK (checked_cb), window);
  g_object_bind_property (window, "document", signals, "target", G_BINDING_SYNC_CREATE);
  g_object_set_data_full (G_OBJECT (window), "pp-put-right-signals", signals, g_object_unref);
  g_signal_connect (window, "notify::page-name", G_CALLBACK (page_cb), NULL);
  update (window);
}

void
pp_put_right_set_keys (GtkApplication *application)
{
  gtk_application_set_accels_for_action (application, "win.put-all-right",
                                         (const char *[]) { "<Control>r", NULL });
}
