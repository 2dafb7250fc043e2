/* margin-words.c: what the margin says besides the findings.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/margin-words.h"

#include "desk/nagging.h"
#include "panel/i18n.h"

gboolean
pp_margin_words_waits (PpDocument *document)
{
  const PpCheck *check = pp_document_get_check (document);

  for (guint i = 0; check != NULL && i < check->findings->len; i++)
    {
      const PpFinding *finding = g_ptr_array_index (check->findings, i);

      if (!finding->quiet && pp_finding_waits (finding, check->panel))
        return TRUE;
    }
  return FALSE;
}

char *
pp_margin_words_waiting (void)
{
  return g_strdup_printf (ngettext ("Whether the wire is hidden and the panel hangs level is said "
                                    "from %u piece on.",
                                    "Whether the wire is hidden and the panel hangs level is said "
                                    "from %u pieces on.",
                                    PP_NAGGING_FEW),
                          PP_NAGGING_FEW);
}

static char *
say_count (PpLevel level,
           guint   n)
{
  switch (level)
    {
    case PP_LEVEL_FAULT:
      return g_strdup_printf (ngettext ("%u fault", "%u faults", n), n);
    case PP_LEVEL_CAUTION:
      return g_strdup_printf (ngettext ("%u caution", "%u cautions", n), n);
    case PP_LEVEL_NOTE:
      return g_strdup_printf (ngettext ("%u note", "%u notes", n), n);
    }
  g_return_val_if_reached (NULL);
}

char *
pp_margin_words_counts (GPtrArray *findings)
{
  guint n[PP_LEVEL_NOTE + 1] = { 0 };
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < findings->len; i++)
    n[((const PpFinding *) g_ptr_array_index (findings, i))->level]++;
  for (guint level = PP_LEVEL_FAULT; level <= PP_LEVEL_NOTE; level++)
    if (n[level] > 0)
      g_ptr_array_add (parts, say_count (level, n[level]));
  g_ptr_array_add (parts, NULL);
  /* Translators: between the parts of a list: "2 faults, 1 note". */
  return g_strjoinv (C_("between parts of a list", ", "), (char **) parts->pdata);
}

const char *
pp_margin_words_calm (const PpPanel *panel,
                      gboolean       waits)
{
  if (panel->placements->len == 0)
    return _("Nothing lies on the glass yet. Drag a piece onto it from the tray, or press it there "
             "twice. What needs a look will be written here.");
  if (waits)
    return _("So far, so good.");
  return _("Nothing here needs a second look.");
}

char *
pp_margin_words_folded (guint    n,
                        gboolean is_unfolded)
{
  if (is_unfolded)
    return g_strdup_printf (ngettext ("%u more", "%u more", n), n);
  return g_strdup_printf (ngettext ("%u more, folded", "%u more, folded", n), n);
}

char *
pp_margin_words_known (guint n)
{
  return g_strdup_printf (ngettext ("%u kept quiet", "%u kept quiet", n), n);
}
