/* picking-work.h: finds pieces in a picture in a thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Steps whose question has not changed keep their answer: another slider does not open the photo
 * again. One thing at a time; what is asked for last is done. For the main thread.
 * Signals: seen, what pp_picking_work_get_sight() gives is another; done, what was asked for is
 * there, or cannot be.
 */
#pragma once

#include "desk/picking.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What there is to look at, each NULL as long as there is none. Borrowed. */
typedef struct
{
  PpPhoto         *photo;
  cairo_surface_t *shown;    /* the photo, smaller */
  double           share;    /* pixels of `shown` to one of the photo */
  gboolean         has_corners;
  PpPoint          corners[4]; /* of the frame, pixels of the photo; as found or as told */
  PpSquared       *squared;
  cairo_surface_t *sheet;    /* what is squared, a pixel a dot */
} PpPickingSight;

#define PP_TYPE_PICKING_WORK (pp_picking_work_get_type ())
G_DECLARE_FINAL_TYPE (PpPickingWork, pp_picking_work, PP, PICKING_WORK, GObject)

PpPickingWork        *pp_picking_work_new       (void);
const PpPickingSight *pp_picking_work_get_sight (PpPickingWork   *self);
/* Finds what `picking`, which has a file, means; `done` follows. Asked for what it is about
 * already, it goes on. */
void                  pp_picking_work_ask       (PpPickingWork   *self,
                                                 const PpPicking *picking);
void                  pp_picking_work_stop      (PpPickingWork   *self);
gboolean              pp_picking_work_is_busy   (PpPickingWork   *self);
/* 0 to 1. */
double                pp_picking_work_get_done  (PpPickingWork   *self);
/* Puts what was found into `picking`, or why nothing could be; FALSE where that was not what was
 * asked for. */
gboolean              pp_picking_work_put_in    (PpPickingWork   *self,
                                                 PpPicking       *picking);

G_END_DECLS
