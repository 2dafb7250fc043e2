/* rules-private.h: what a value of a panel must be.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each says whether `value` may stand in `member`, and if not sets PP_PANEL_ERROR_VALUE with
 * "member: what it must be, not what it is". No number may be NAN, infinite or farther from 0 than
 * PP_FIGURE_MAX, but where the function's name says that null is allowed.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define PP_FIGURE_MAX 1e9 /* of any unit: more than a panel has of anything */

gboolean pp_rule_finite           (double value, const char *member, GError **error);
gboolean pp_rule_positive         (double value, const char *member, GError **error);
gboolean pp_rule_positive_or_null (double value, const char *member, GError **error);
gboolean pp_rule_not_negative     (double value, const char *member, GError **error);
gboolean pp_rule_not_negative_or_null (double value, const char *member, GError **error);
/* From `least` to `most`, both allowed. */
gboolean pp_rule_between          (double value, double least, double most, const char *member,
                                   GError **error);
/* Within PP_FARTHEST of an origin, across or down. */
gboolean pp_rule_coordinate       (double value, const char *member, GError **error);
/* 0 to under 90 degrees. */
gboolean pp_rule_view             (double value, const char *member, GError **error);
gboolean pp_rule_colour           (const char *value, const char *member, GError **error);
gboolean pp_rule_id               (const char *value, const char *member, GError **error);
/* RFC 3339 date and time with its offset. */
gboolean pp_rule_time             (const char *value, const char *member, GError **error);
gboolean pp_rule_time_or_null     (const char *value, const char *member, GError **error);
/* A date alone will do, or an empty text. */
gboolean pp_rule_date             (const char *value, const char *member, GError **error);

G_END_DECLS
