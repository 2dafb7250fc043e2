/* json-values.h: values of a panel as JSON: points, outlines, and what may be null.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "file/json-write.h"
#include "panel/outline.h"

G_BEGIN_DECLS

/* NAN is null. */
void pp_json_write_number_or_null (PpJsonWriter *w,
                                   const char   *name,
                                   double        number);
/* NAN is left out. */
void pp_json_write_number_if_set  (PpJsonWriter *w,
                                   const char   *name,
                                   double        number);
/* NULL is null. */
void pp_json_write_string_or_null (PpJsonWriter *w,
                                   const char   *name,
                                   const char   *string);
/* NULL is left out. */
void pp_json_write_string_if_set  (PpJsonWriter *w,
                                   const char   *name,
                                   const char   *string);
/* A list of texts; `strings` is ended by NULL. */
void pp_json_write_strings        (PpJsonWriter       *w,
                                   const char         *name,
                                   const char * const *strings);
/* [x, y] */
void pp_json_write_point          (PpJsonWriter *w,
                                   const char   *name,
                                   PpPoint       p);
/* A GeoJSON Polygon, with the members of it that the program does not know. */
void pp_json_write_outline        (PpJsonWriter    *w,
                                   const char      *name,
                                   const PpOutline *outline);

G_END_DECLS
