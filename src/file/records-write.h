/* records-write.h: the records of a panel as JSON objects, key by key as the page on the file.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every key is written, also where the value is the one that a missing key has; only density and
 * expansion of a fused part's glass, flat of a form, and art and box of a piece are left out where
 * they are not set. Members the program does not know stand at the end of their object. `name` as
 * in json-write.h: NULL in an array.
 */
#pragma once

#include "file/json-write.h"
#include "panel/record.h"

G_BEGIN_DECLS

void pp_write_background    (PpJsonWriter *w, const char *name, const PpBackground *background);
void pp_write_fused         (PpJsonWriter *w, const char *name, const PpFused *fused);
void pp_write_hole          (PpJsonWriter *w, const char *name, const PpHole *hole);
/* `wire` NULL is null. */
void pp_write_wire          (PpJsonWriter *w, const char *name, const PpWire *wire);
void pp_write_display       (PpJsonWriter *w, const char *name, const PpDisplay *display);
void pp_write_adhesive      (PpJsonWriter *w, const char *name, const PpAdhesive *adhesive);
void pp_write_piece         (PpJsonWriter *w, const char *name, const PpPiece *piece);
/* The members of a piece alone, into an object that is open and may get more. */
void pp_write_piece_members (PpJsonWriter *w, const PpPiece *piece);
void pp_write_placement     (PpJsonWriter *w, const char *name, const PpPlacement *placement);
void pp_write_log_entry     (PpJsonWriter *w, const char *name, const PpLogEntry *entry);
void pp_write_quiet         (PpJsonWriter *w, const char *name, const PpQuiet *quiet);

G_END_DECLS
