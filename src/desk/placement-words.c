/* placement-words.c: a placed piece in words.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/placement-words.h"

#include "panel/i18n.h"
#include "panel/measure.h"

/* So many things under a piece are named; of more, how many they are. */
#define MOST_NAMED 3

char *
pp_placement_words_piece (const PpPanel *panel,
                          guint          index)
{
  const PpPiece *piece;

  g_return_val_if_fail (panel != NULL && index < panel->placements->len, NULL);

  piece = pp_panel_get_piece_of (panel, pp_panel_placement (panel, index));
  return g_strdup (*piece->name != '\0' ? piece->name : piece->id);
}

char *
pp_placement_words_name (const PpPanel *panel,
                         guint          index)
{
  const PpPlacement *placement;
  g_autofree char *name = NULL, *left = NULL, *top = NULL;

  g_return_val_if_fail (panel != NULL && index < panel->placements->len, NULL);

  placement = pp_panel_placement (panel, index);
  name = pp_placement_words_piece (panel, index);
  left = pp_length_format (placement->x, panel->units);
  top = pp_length_format (placement->y, panel->units);
  /* Translators: a piece, its place in the stack from the bottom, how many are in the stack, and
   * where it lies: "Cornflower, 3 of 14, 120 mm from the left, 45 mm from the top" */
  return g_strdup_printf (_("%s, %u of %u, %s from the left, %s from the top"), name, index + 1,
                          panel->placements->len, left, top);
}

static char *
name_owner (const PpPanel *panel,
            PpOwner        owner)
{
  guint index = pp_owner_index (owner);
  const PpFused *fused;

  switch (pp_owner_kind (owner))
    {
    case PP_OWNER_BACKGROUND:
      return g_strdup (C_("on", "the glass"));
    case PP_OWNER_KNOT:
      return g_strdup (C_("on", "a knot"));
    case PP_OWNER_PLACEMENT:
      return pp_placement_words_piece (panel, index);
    case PP_OWNER_FUSED:
      fused = pp_panel_fused (panel, index);
      return g_strdup (*fused->name != '\0' ? fused->name : fused->id);
    case PP_OWNER_NOTHING:
      break;
    }
  g_return_val_if_reached (g_strdup (""));
}

static gboolean
is_named (GPtrArray  *names,
          const char *name)
{
  for (guint i = 0; i < names->len; i++)
    if (g_str_equal (g_ptr_array_index (names, i), name))
      return TRUE;
  return FALSE;
}

/* Each name once, the highest of the stack first and the glass last. */
static GPtrArray *
name_owners (const PpPanel *panel,
             const PpRest  *rest)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = rest->n_rests_on; i-- > 0;)
    {
      g_autofree char *name = name_owner (panel, rest->rests_on[i]);

      if (!is_named (names, name))
        g_ptr_array_add (names, g_steal_pointer (&name));
    }
  return names;
}

static char *
join_names (GPtrArray *names)
{
  const char *a = names->len > 0 ? g_ptr_array_index (names, 0) : "";
  const char *b = names->len > 1 ? g_ptr_array_index (names, 1) : "";

  if (names->len > MOST_NAMED)
    /* Translators: what a piece lies on: "Fern, Sedge and 3 more" */
    return g_strdup_printf (_("%s, %s and %u more"), a, b, names->len - 2);
  if (names->len == 3)
    return g_strdup_printf (_("%s, %s and %s"), a, b, (char *) g_ptr_array_index (names, 2));
  if (names->len == 2)
    return g_strdup_printf (_("%s and %s"), a, b);
  return g_strdup (a);
}

static const char *
name_state (PpState state)
{
  switch (state)
    {
    case PP_STATE_STEADY:
      return _("sits firm");
    case PP_STATE_UNSTEADY:
      return _("needs holding");
    case PP_STATE_TIPS:
      return _("needs a prop");
    case PP_STATE_FLOATS:
      return _("nothing under it");
    }
  g_return_val_if_reached ("");
}

char *
pp_placement_words_rest (const PpPanel *panel,
                         const PpRest  *rest)
{
  g_autoptr (GPtrArray) names = NULL;
  g_autofree char *under = NULL;

  g_return_val_if_fail (panel != NULL && rest != NULL, NULL);

  names = name_owners (panel, rest);
  if (rest->state == PP_STATE_FLOATS || names->len == 0)
    return g_strdup (name_state (rest->state));
  under = join_names (names);
  /* Translators: what a piece lies on and how: "on Fern and the glass, sits firm" */
  return g_strdup_printf (_("on %s, %s"), under, name_state (rest->state));
}

char *
pp_placement_words_state (PpDocument *document,
                          const char *placement)
{
  const PpRest *rest = pp_document_get_rest (document, placement);

  if (rest == NULL)
    return g_strdup ("");
  return pp_placement_words_rest (pp_document_get_check (document)->panel, rest);
}
