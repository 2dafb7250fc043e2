/* measure.h: lengths, weights, volumes and times as a maker writes and reads them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The file holds millimetres and grams; what is shown goes by the maker's unit. Inches are shown
 * as fractions to 1/16 in lowest terms, millimetres whole or, where small, to a tenth.
 * All strings are (transfer full), translated, and use the locale's decimal point.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

#define PP_GRAMS_PER_OUNCE 28.349523125 /* international avoirdupois, exact since 1959 */

/* "216 mm", "4.5 mm" (a tenth is shown under 10 mm, never "4.0"), "8 1/2 in", "0 in". A length
 * that is not zero never shows as zero: "under 1/16 in", "under 0.1 mm". */
char    *pp_length_format       (double       mm,
                                 PpUnits      units);
/* The figure alone, for tables and fields whose heading names the unit: "216", "8 1/2"; "under
 * 1/16" too, which pp_length_parse() does not take: a field reads only what was typed. */
char    *pp_length_format_bare  (double       mm,
                                 PpUnits      units);
/* "300 x 420 mm", with a real multiplication sign; "11 13/16 x 16 9/16 in". */
char    *pp_size_format         (double       width,
                                 double       height,
                                 PpUnits      units);
/* "412 g", "2.41 kg"; inches: "14.5 oz", "0.04 oz", "5 lb 5 oz". */
char    *pp_mass_format         (double       g,
                                 PpUnits      units);
/* Of what was not weighed: "about 14 g"; but "under 0.1 g". */
char    *pp_mass_format_about   (double       g,
                                 PpUnits      units);
/* "0.8 ml" to a tenth; under 0.1 to a hundredth. */
char    *pp_volume_format       (double       ml);
/* "1 min", "2 min 30 s", "1 h", "1 h 5 min", "24 h"; to whole quarters of a minute under an
 * hour. */
char    *pp_time_format         (double       minutes);
/* "12°", to whole degrees; a tenth under 10. */
char    *pp_angle_format        (double       degrees);
/* A place on the panel: "120 mm from the left and 45 mm from the top". */
char    *pp_place_format        (const PpPanel *panel,
                                 PpPoint       p);

/* Reads a length as typed: "8 1/2", "8-1/2", "8.5", "8,5", "216 mm", "21.6 cm", "5/16\"", "8½",
 * "1 ft 2 in", with white space anywhere between figures and units; the unit is `units` unless
 * one is written. FALSE, and `mm` untouched, for anything else. A minus sign is read only in
 * front. */
gboolean pp_length_parse        (const char  *text,
                                 PpUnits      units,
                                 double      *mm);
/* Reads a weight likewise: "32 g", "1 1/2 oz", "0,4 kg", "2 lb"; without a unit grams, or ounces
 * where lengths are in inches. */
gboolean pp_mass_parse          (const char  *text,
                                 PpUnits      units,
                                 double      *g);

G_END_DECLS
