/* art-rules.h: what an element's name and its attributes may be.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to the judge. Errors are PP_ART_ERROR of any code.
 */
#pragma once

#include "art/art-refs.h"

G_BEGIN_DECLS

#define PP_ART_MAX_NUMBER 10000.0 /* mm; a panel is 3000 */

/* Without its prefix. (transfer none) */
const char *pp_art_get_local_name           (const char         *name);
/* Upper and lower case alike; `names` ends with NULL. */
gboolean    pp_art_is_one_of                (const char         *name,
                                             const char * const *names);

gboolean    pp_art_rules_judge_name         (const char         *name,
                                             GError            **error);
/* Style or style sheet, with escapes as written: costs that its text does not tell. */
gboolean    pp_art_rules_judge_css          (const char         *escaped,
                                             GError            **error);
/* Adds to `refs` what the attribute refers to. */
gboolean    pp_art_rules_judge_attribute    (const char         *name,
                                             const char         *value,
                                             PpArtRefs          *refs,
                                             GError            **error);

/* In simple elements: what is drawn on a sheet of its own because of a style or an attribute. */
double      pp_art_rules_get_css_layer_cost (const char         *escaped);
double      pp_art_rules_get_layer_cost     (const char         *local,
                                             const char         *value);

G_END_DECLS
