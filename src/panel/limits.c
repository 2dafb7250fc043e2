/* limits.c: the limits that findings and plans go by, with their defaults and ranges.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/limits.h"

#include "panel/rules-private.h"

#include <math.h>

typedef enum
{
  RANGE_NOT_NEGATIVE,
  RANGE_POSITIVE,
  RANGE_SHARE, /* 0 to 1 */
  RANGE_PART,  /* more than 0, to 1 */
} Range;

typedef struct
{
  const char *key;
  double      standard;
  Range       range;
} Row;

/* More than 0 where the program divides by it: a dab's area, a length by the way between dabs, a
 * load by the factor. */
static const Row rows[PP_N_LIMITS] = {
  [PP_LIMIT_CONTACT] = { "contact", 0.05, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_STEADY] = { "steady", 3, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_SLOPE] = { "slope", 15, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_DAB] = { "dab", 8, RANGE_POSITIVE },
  [PP_LIMIT_DAB_EVERY] = { "dab_every", 60, RANGE_POSITIVE },
  [PP_LIMIT_DAB_LEAST] = { "dab_least", 0.05, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_BOND] = { "bond", 0.15, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_WASTE] = { "waste", 1.3, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_KNOT_GLUE] = { "knot_glue", 0.15, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_STRAIN] = { "strain", 0.5, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_JOINT_SHARE] = { "joint_share", 0.02, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_SQUEEZE] = { "squeeze", 1, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_OVERLAP] = { "overlap", 1, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_TUCK] = { "tuck", 2, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_PIECE_MINUTES] = { "piece_minutes", 1, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_KNOT_MINUTES] = { "knot_minutes", 0.5, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_STEM_MINUTES] = { "stem_minutes", 0.5, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_DAB_MINUTES] = { "dab_minutes", 0.25, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_OPAQUE] = { "opaque", NAN, RANGE_SHARE },
  [PP_LIMIT_EXPOSED_CAUTION] = { "exposed_caution", 0.3, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_EXPOSED_FAULT] = { "exposed_fault", 3, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_KNOT_SHARE] = { "knot_share", 0.95, RANGE_SHARE },
  [PP_LIMIT_PLACE] = { "place", 3, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_KNOT_EFFICIENCY] = { "knot_efficiency", 0.5, RANGE_PART },
  [PP_LIMIT_DESIGN_FACTOR] = { "design_factor", 5, RANGE_POSITIVE },
  [PP_LIMIT_TILT] = { "tilt", 2, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_LEAN] = { "lean", 5, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_GROUP] = { "group", 15, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_SEAM] = { "seam", 10, RANGE_NOT_NEGATIVE },
  [PP_LIMIT_DAB_SMALL] = { "dab_small", 2, RANGE_NOT_NEGATIVE },
};

void
pp_limits_init (PpLimits *self)
{
  for (PpLimit limit = 0; limit < PP_N_LIMITS; limit++)
    self->value[limit] = NAN;
}

const char *
pp_limit_get_key (PpLimit limit)
{
  g_return_val_if_fail (limit < PP_N_LIMITS, NULL);
  return rows[limit].key;
}

double
pp_limit_get_default (PpLimit limit)
{
  g_return_val_if_fail (limit < PP_N_LIMITS, NAN);
  return rows[limit].standard;
}

static gboolean
check (const Row *row,
       double     value,
       GError   **error)
{
  if (isnan (value))
    return TRUE;
  switch (row->range)
    {
    case RANGE_NOT_NEGATIVE:
      return pp_rule_not_negative (value, row->key, error);
    case RANGE_POSITIVE:
      return pp_rule_positive (value, row->key, error);
    case RANGE_SHARE:
      return pp_rule_between (value, 0, 1, row->key, error);
    case RANGE_PART:
      return pp_rule_positive (value, row->key, error)
             && pp_rule_between (value, 0, 1, row->key, error);
    }
  g_return_val_if_reached (FALSE);
}

gboolean
pp_limits_check (const PpLimits *self,
                 GError        **error)
{
  for (PpLimit i = 0; i < PP_N_LIMITS; i++)
    if (!check (&rows[i], self->value[i], error))
      return FALSE;
  return TRUE;
}
