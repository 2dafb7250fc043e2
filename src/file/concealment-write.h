/* concealment-write.h: concealment and hanging as JSON, and values that may be null.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/check.h"
#include "file/json-write.h"

G_BEGIN_DECLS

/* Left out without wire and holes. */
void pp_write_concealment         (PpJsonWriter  *w,
                                   const PpCheck *check);
/* null without a wire. */
void pp_write_hanging             (PpJsonWriter  *w,
                                   const PpHang  *hang);

/* NAN is null. */
void pp_json_write_number_or_null (PpJsonWriter  *w,
                                   const char    *name,
                                   double         number);
void pp_json_write_string_or_null (PpJsonWriter  *w,
                                   const char    *name,
                                   const char    *string);
/* [x, y] */
void pp_json_write_point          (PpJsonWriter  *w,
                                   const char    *name,
                                   PpPoint        p);

G_END_DECLS
