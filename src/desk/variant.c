/* variant.c: a panel made from another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/variant.h"

#include "advise/again.h"
#include "advise/fit.h"
#include "advise/vary.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"
#include "shape/background.h"

PpVariantWish
pp_variant_wish (const PpPanel *panel)
{
  PpBox box = pp_background_get_box (panel->background);

  return (PpVariantWish) { .width = pp_box_width (box), .height = pp_box_height (box) };
}

gboolean
pp_variant_is_resized (const PpPanel       *panel,
                       const PpVariantWish *wish)
{
  PpVariantWish now = pp_variant_wish (panel);

  return fabs (now.width - wish->width) >= PP_TIE || fabs (now.height - wish->height) >= PP_TIE;
}

/* "Towpath, 300 × 400 mm", of the first one's name and not of the size it may end with. */
static char *
name_by_size (const PpPanel       *panel,
              const PpVariantWish *wish)
{
  PpVariantWish now = pp_variant_wish (panel);
  g_autofree char *old = pp_size_format (now.width, now.height, panel->units);
  g_autofree char *size = pp_size_format (wish->width, wish->height, panel->units);
  g_autofree char *ending = g_strconcat (", ", old, NULL);
  g_autofree char *title = g_strdup (panel->title);

  if (g_str_has_suffix (title, ending))
    title[strlen (title) - strlen (ending)] = '\0';
  return *title != '\0' ? g_strconcat (title, ", ", size, NULL) : g_strdup ("");
}

static PpPanel *
name_and_date (const PpPanel *panel,
               const char    *title,
               const char    *created)
{
  PpPanel draft = *panel;

  draft.title = title;
  draft.created = created != NULL ? created : "";
  return pp_panel_new (&draft, NULL);
}

PpPanel *
pp_variant_new (const PpPanel       *panel,
                const PpVariantWish *wish,
                const char          *created,
                GError             **error)
{
  g_autoptr (PpPanel) again = NULL;
  g_autoptr (PpPanel) fitted = NULL;
  g_autoptr (PpPanel) varied = NULL;
  g_autofree char *title = NULL;

  g_return_val_if_fail (panel != NULL && wish != NULL, NULL);

  again = pp_again_new (panel);
  if (pp_variant_is_resized (panel, wish))
    fitted = pp_fit_new (again, wish->width, wish->height, error);
  else
    fitted = pp_panel_ref (again);
  if (fitted == NULL)
    return NULL;
  varied = pp_vary_new (fitted, wish->number);
  title = wish->is_size ? name_by_size (panel, wish) : g_strdup (again->title);
  return name_and_date (varied, title, created);
}

static void
progress_cb (const PpAdviceProgress *progress,
             gpointer                work)
{
  pp_work_report (progress->share, work);
}

PpAdvice *
pp_variant_put_right (const PpPanel *variant,
                      PpWork        *work)
{
  const PpSearchLimits limits = { .steps = PP_FIT_STEPS };

  g_return_val_if_fail (variant != NULL && work != NULL, NULL);
  return pp_advise_all (variant, &limits, pp_work_get_cancellable (work), progress_cb, work);
}

static const char *
say_spaces (const PpPanel       *panel,
            const PpVariantWish *wish)
{
  PpVariantWish now = pp_variant_wish (panel);

  if (wish->width >= now.width && wish->height >= now.height)
    return _("The spaces between the pieces grow with the glass. Every piece keeps its size.");
  if (wish->width <= now.width && wish->height <= now.height)
    return _("The spaces between the pieces shrink with the glass. Every piece keeps its size.");
  return _("The spaces between the pieces change with the glass. Every piece keeps its size.");
}

/* mm: of the piece that is moved farthest by the arrangement alone. */
static double
find_farthest (const PpPanel       *panel,
               const PpVariantWish *wish,
               const PpPanel       *variant)
{
  PpVariantWish own = *wish;
  g_autoptr (PpPanel) plain = NULL;
  double farthest = 0;

  own.number = 0;
  plain = pp_variant_new (panel, &own, NULL, NULL);
  for (guint i = 0; plain != NULL && i < plain->placements->len; i++)
    {
      const PpPlacement *before = pp_panel_placement (plain, i);
      const PpPlacement *after = pp_panel_placement (variant, i);

      farthest = fmax (farthest, hypot (after->x - before->x, after->y - before->y));
    }
  return farthest;
}

char *
pp_variant_describe (const PpPanel       *panel,
                     const PpVariantWish *wish,
                     const PpPanel       *variant)
{
  gboolean is_resized = pp_variant_is_resized (panel, wish);
  const char *first = is_resized ? say_spaces (panel, wish) : NULL;
  g_autofree char *length = NULL;
  g_autofree char *second = NULL;

  if (wish->number == 0)
    return g_strdup (first != NULL ? first
                                   : _("The same layout. Nothing on it is glued, knotted or "
                                       "drilled yet."));
  length = pp_length_format (find_farthest (panel, wish, variant), panel->units);
  /* Translators: a length. */
  second = g_strdup_printf (_("Each piece lies a little elsewhere than on yours, %s at most."),
                            length);
  return first != NULL ? g_strconcat (first, " ", second, NULL) : g_steal_pointer (&second);
}

char *
pp_variant_list_to_make (const PpPanel *panel)
{
  g_autoptr (GArray) list = NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  g_return_val_if_fail (panel != NULL, NULL);

  list = pp_again_list_to_make (panel);
  for (guint i = 0; i < list->len; i++)
    {
      const PpToMake *make = &g_array_index (list, PpToMake, i);
      const PpPiece *piece = pp_panel_piece (panel, make->piece);

      g_string_append_printf (text, "%s%u × %s", i > 0 ? "\n" : "", make->count,
                              *piece->name != '\0' ? piece->name : piece->id);
    }
  return list->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}
