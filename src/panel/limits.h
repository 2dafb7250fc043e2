/* limits.h: the limits of format.md, with their defaults, and what a panel sets of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* In the order of format.md; what each means stands in the page of the computation that uses it. */
typedef enum
{
  PP_LIMIT_CONTACT,
  PP_LIMIT_STEADY,
  PP_LIMIT_SLOPE,
  PP_LIMIT_DAB,
  PP_LIMIT_DAB_EVERY,
  PP_LIMIT_DAB_LEAST,
  PP_LIMIT_BOND,
  PP_LIMIT_WASTE,
  PP_LIMIT_KNOT_GLUE,
  PP_LIMIT_STRAIN,
  PP_LIMIT_JOINT_SHARE,
  PP_LIMIT_SQUEEZE,
  PP_LIMIT_OVERLAP,
  PP_LIMIT_TUCK,
  PP_LIMIT_PIECE_MINUTES,
  PP_LIMIT_KNOT_MINUTES,
  PP_LIMIT_STEM_MINUTES,
  PP_LIMIT_DAB_MINUTES,
  PP_LIMIT_OPAQUE,
  PP_LIMIT_EXPOSED_CAUTION,
  PP_LIMIT_EXPOSED_FAULT,
  PP_LIMIT_KNOT_SHARE,
  PP_LIMIT_PLACE,
  PP_LIMIT_KNOT_EFFICIENCY,
  PP_LIMIT_DESIGN_FACTOR,
  PP_LIMIT_TILT,
  PP_LIMIT_LEAN,
  PP_LIMIT_GROUP,
  PP_LIMIT_SEAM,
  PP_LIMIT_DAB_SMALL,
  PP_N_LIMITS
} PpLimit;

/* A limit the panel does not set is NAN; PP_LIMIT_OPAQUE has no default of its own (it goes by the
 * place, see pp_panel_get_limit()). */
typedef struct
{
  double value[PP_N_LIMITS];
} PpLimits;

void        pp_limits_init        (PpLimits   *self);
/* The key in the file, "exposed_caution". (transfer none) */
const char *pp_limit_get_key      (PpLimit     limit);
/* NAN for PP_LIMIT_OPAQUE. */
double      pp_limit_get_default  (PpLimit     limit);
/* Errors: PP_PANEL_ERROR_VALUE for a set limit out of its range: none is negative or infinite;
 * those that divide are more than 0; shares (opaque, knot_share, knot_efficiency) are at most 1. */
gboolean    pp_limits_check       (const PpLimits *self,
                                   GError        **error);

G_END_DECLS
