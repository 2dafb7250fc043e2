/* records-read.h: the records of a panel from their JSON objects.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each returns (transfer full), or NULL once its reader has an error.
 */
#pragma once

#include "file/members.h"
#include "panel/record.h"

G_BEGIN_DECLS

PpBackground *pp_read_background (PpMembers *members);
PpFused      *pp_read_fused      (PpMembers *members);
PpHole       *pp_read_hole       (PpMembers *members);
PpWire       *pp_read_wire       (PpMembers *members);
PpDisplay    *pp_read_display    (PpMembers *members);
PpAdhesive   *pp_read_adhesive   (PpMembers *members);
PpPiece      *pp_read_piece      (PpMembers *members);
PpPlacement  *pp_read_placement  (PpMembers *members);
PpLogEntry   *pp_read_log_entry  (PpMembers *members);
PpQuiet      *pp_read_quiet      (PpMembers *members);

/* An array of objects, each read by `read`; `unref` frees what it gives. A list that is not there
 * is empty. (transfer full), never NULL. */
typedef gpointer (*PpReadFunc)   (PpMembers *members);
GPtrArray    *pp_read_list       (PpMembers     *members,
                                  const char    *name,
                                  guint          most,
                                  PpReadFunc     read,
                                  GDestroyNotify unref);

G_END_DECLS
