/* round.h: what is dark and round in a photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to discs.
 */
#pragma once

#include "piece/photo.h"

G_BEGIN_DECLS

/* Pixels of the photo. */
typedef struct
{
  PpPoint  middle;
  double   area;      /* its hole filled */
  double   off;       /* from the area of the ellipse with its moments, as a share */
  gboolean has_hole;  /* bright in the middle */
} PpRound;

/* GArray of PpRound, the roundest first, not all of them once cancelled; (transfer full). */
GArray *pp_rounds_find (const PpPhoto *photo,
                        GCancellable  *cancellable);

G_END_DECLS
