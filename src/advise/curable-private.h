/* curable-private.h: what could put a finding right, for those who look for it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "advise/curable.h"
#include "advise/glance.h"

G_BEGIN_DECLS

/* What can be done about a finding. */
typedef enum
{
  PP_MEND_NOTHING,
  PP_MEND_WIRE,  /* a piece over it; now and then another length or other holes */
  PP_MEND_DISC,  /* a piece over a knot or hole, or that under one */
  PP_MEND_PIECE,
  PP_MEND_HOLE,
  PP_MEND_HANG,
  PP_MEND_GROUP,
  PP_MEND_STOCK, /* one taken off */
  PP_MEND_STEMS, /* one taken out of the pocket */
} PpMend;

/* By the code of a finding. */
PpMend   pp_mend_of   (const char *code);
/* The probes that see what such a finding is about; none where it is of no sight. */
PpProbes pp_probes_of (const char *code);

G_END_DECLS
