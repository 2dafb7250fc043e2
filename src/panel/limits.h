/* limits.h: the limits that findings and plans go by, with their defaults, and what a panel sets.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  PP_LIMIT_CONTACT,          /* mm between two surfaces that touch */
  PP_LIMIT_STEADY,           /* mm by which a centre of mass lies within its contacts */
  PP_LIMIT_SLOPE,            /* degrees, beyond them glass slides on wet glue */
  PP_LIMIT_DAB,              /* mm across, at most */
  PP_LIMIT_DAB_EVERY,        /* mm of length for which there is one dab */
  PP_LIMIT_DAB_LEAST,        /* ml */
  PP_LIMIT_BOND,             /* mm of glue where glass touches */
  PP_LIMIT_WASTE,            /* times the glue that stays */
  PP_LIMIT_KNOT_GLUE,        /* ml */
  PP_LIMIT_STRAIN,           /* share of the working stress */
  PP_LIMIT_JOINT_SHARE,      /* area of the joint by that of the piece */
  PP_LIMIT_SQUEEZE,          /* dabs by what the joint holds */
  PP_LIMIT_OVERLAP,          /* mm² that two outlines may share */
  PP_LIMIT_TUCK,             /* mm of room under which nothing is tucked in later */
  PP_LIMIT_PIECE_MINUTES,
  PP_LIMIT_KNOT_MINUTES,
  PP_LIMIT_STEM_MINUTES,     /* of a piece in a pocket */
  PP_LIMIT_DAB_MINUTES,      /* each after the second */
  PP_LIMIT_OPAQUE,           /* share of light that what hides lets through */
  PP_LIMIT_EXPOSED_CAUTION,  /* mm of wire in view */
  PP_LIMIT_EXPOSED_FAULT,    /* mm */
  PP_LIMIT_KNOT_SHARE,       /* of a knot or hole that is to be hidden */
  PP_LIMIT_PLACE,            /* mm by which pieces land off */
  PP_LIMIT_KNOT_EFFICIENCY,  /* share of its strength that a knotted wire has */
  PP_LIMIT_DESIGN_FACTOR,    /* breaking load by the load allowed */
  PP_LIMIT_TILT,             /* degrees of a hung panel */
  PP_LIMIT_LEAN,             /* degrees, top forward */
  PP_LIMIT_GROUP,            /* mm between flowers that stand together */
  PP_LIMIT_SEAM,             /* mm of fused glass beside a pocket */
  PP_LIMIT_DAB_SMALL,        /* mm across, at least */
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
