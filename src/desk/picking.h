/* picking.h: pieces being made from a picture: all that the maker has told of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value, part of a making. Places are pixels of the photo, so that they stay when the frame is
 * set otherwise or the slider moves; a piece is known by a place on it. What is found by all this
 * is put in by picking-work.h, and is due as long as something was told since.
 */
#pragma once

#include "panel/panel.h"
#include "piece/answers.h"
#include "piece/found.h"

G_BEGIN_DECLS

typedef enum
{
  PP_SCALE_FRAME,
  PP_SCALE_SCAN,
  PP_SCALE_LENGTH,
} PpPickingScale;

/* What was told of one piece. */
typedef struct
{
  PpPoint   at;       /* on it */
  char     *name;     /* "": the picture's, numbered */
  PpAnswers answers;  /* but for the name */
  guint     offcuts;  /* as in making.h */
  double    offcut;
  double    rim;      /* mm that its border stands above the sheet; NAN: not told */
  gboolean  is_left_out;
} PpPicked;

typedef struct
{
  GBytes         *file;       /* NULL: none chosen */
  char           *title;      /* of the file; NULL */
  PpPickingScale  scale;
  PpPoint         frame;      /* mm between the discs, across and down */
  gboolean        has_corners; /* the maker set them; else they are looked for */
  PpPoint         corners[4];
  double          dpi;        /* NAN: as the file says */
  gboolean        has_ends;
  PpPoint         ends[2];
  double          length;     /* mm between them; NAN: not told */
  double          more;       /* the slider, -1 to 1 */
  double          lens;       /* mm above the sheet; NAN: not told */
  GArray         *strokes;    /* PpStroke */
  GPtrArray      *picked;     /* PpPicked */
  PpPoint         chosen;     /* on the piece that is asked about; NAN: the first */

  gboolean        is_due;
  PpFound        *found;      /* NULL: none; what was found before while it is due */
  char           *said;       /* why nothing could be found; NULL */
} PpPicking;

/* Between the discs as the photo frame is printed. */
PpPicking pp_picking_new       (void);
/* For another picture, taken in the same way. */
PpPicking pp_picking_next      (const PpPicking *self);
PpPicking pp_picking_copy      (const PpPicking *self);
void      pp_picking_clear     (PpPicking       *self);
/* Without what was found, which is large; it is due again. */
void      pp_picking_forget    (PpPicking       *self);

/* As the steps of piece/ take them, mm in the frame of `found`. (transfer full) */
PpStroke *pp_picking_strokes   (const PpPicking *self,
                                const PpSquared *squared);
/* Adds one in the frame of what was found. */
void      pp_picking_add_stroke (PpPicking      *self,
                                 PpStroke        stroke);

/* The number of what is found that is asked about; 0 if it is none of them. */
guint     pp_picking_get_chosen (const PpPicking *self);
/* What was told of a piece that is found; NULL: nothing. (transfer none) */
PpPicked *pp_picking_get        (const PpPicking *self,
                                 guint            piece);
/* The same, begun if need be. */
PpPicked *pp_picking_tell       (PpPicking       *self,
                                 guint            piece);
gboolean  pp_picking_is_left_out (const PpPicking *self,
                                  guint            piece);
/* How high the border of a piece that was told so stands, mm; not told, it goes by what touches. */
double    pp_picking_get_rim    (const PpPicked  *picked,
                                 const PpAnswers *answers,
                                 const PpOutline *outline);
/* A place on a piece that is found, mm in its frame. */
PpPoint   pp_picking_place      (const PpFound   *found,
                                 guint            piece);

G_END_DECLS
