/* card-fused-private.h: the fields of the card of a fused part; private to card-fused.c and
 * card-fused-show.c, which writes what it shows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/card-fused.h"
#include "desk/figure-entry.h"
#include "desk/text-entry.h"

G_BEGIN_DECLS

struct _PpCardFused
{
  PpCardFace       parent_instance;
  GtkLabel        *title;
  GtkLabel        *state;
  GtkWidget       *shape_title;
  GtkDropDown     *shape;
  PpFigureEntry   *left;
  PpFigureEntry   *top;
  PpFigureEntry   *height;
  GtkWidget       *mouth_title;
  PpFigureEntry   *mouth;
  GtkLabel        *widest_title;
  PpFigureEntry   *widest;
  GtkWidget       *foot_title;
  PpFigureEntry   *foot;
  GtkSwitch       *pocket;
  GtkWidget       *wide_title;
  PpFigureEntry   *wide;
  GtkWidget       *deep_title;
  PpFigureEntry   *deep;
  GtkWidget       *insert_title;
  PpFigureEntry   *insert;
  GtkWidget       *gap_title;
  PpFigureEntry   *gap;
  PpTextEntry     *name;
  PpFigureEntry   *thick;
  GtkWidget       *light_title;
  GtkDropDown     *light;
  GtkWidget       *colour_title;
  GtkColorChooser *colour;
  GtkSwitch       *is_vase;
  char            *id;
  gboolean         showing; /* controls are being set, not used */
};

/* How much light comes through, in the order of the drop-down: a black line behind it cannot be
 * seen, shows as a shadow, shows clearly. */
extern const double pp_card_fused_lights[3];

/* mm: the width of its insert, and how deep it reaches from the top of the part. */
void pp_card_fused_measure_pocket (const PpFused *fused,
                                   double        *wide,
                                   double        *deep);
void pp_card_fused_refresh        (PpCardFace    *face,
                                   PpDocument    *document);

G_END_DECLS
