/* glass.h: the glass something is made of.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* In a fused part density and expansion may be NAN: as the background's
 * (pp_panel_get_fused_density(), pp_panel_get_fused_expansion()). */
typedef struct
{
  double      density;          /* kg/m³, more than 0; 2500 */
  double      refractive_index; /* at least 1; 1.52 */
  double      transmittance;    /* 0 opaque to 1 clear; 0.9 */
  double      expansion;        /* /K, at least 0; 9e-6 */
  const char *colour;           /* #rrggbb */
  const char *extra;            /* unknown members as JSON text without braces, or NULL */
} PpGlass;

G_END_DECLS
