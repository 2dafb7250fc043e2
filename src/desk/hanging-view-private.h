/* hanging-view-private.h: the fields of the view, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * hanging-view.c        the widget: document, size, what can have the focus
 * hanging-view-draw.c   the picture, the wire, the hook, the cut seen from the side
 * hanging-view-ink.c    measures and words
 * hanging-view-drag.c   pointer and keys
 */
#pragma once

#include "desk/hanging-view.h"
#include "desk/palette.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean       is_on;
  gboolean       is_editing; /* the change of the panel that comes in is the drag's own */
  gboolean       has_edit;
  gboolean       is_hook;
  char          *hole;   /* id, or NULL */
  const PpPanel *panel;  /* as it was at the start; edits of a drag begin from it */
  PpScene       *scene;  /* of that panel */
  PpPoint        start;  /* mm, of what is dragged */
} PpHangingDrag;

struct _PpHangingView
{
  GtkWidget        parent_instance;
  PpDocument      *document;
  PpHungHow        how;
  gboolean         has_hang;
  gboolean         is_hung;    /* from a hook */
  PpHang           hang;       /* of the present panel, with the mass of the last check */
  PpMass           mass;
  PpHung           hung;
  PpHangingMap     map;
  double           side_x;     /* px, of the front face in the cut */
  double           low;        /* px, the lower end of the picture */
  double           depth;      /* mm */

  cairo_surface_t *picture;    /* glass and pieces, upright, at `picture_scale` */
  const PpPanel   *pictured;   /* whose they are, without holes and wire */
  double           picture_scale;
  PpBox            picture_box; /* mm */

  GtkWidget       *hook;       /* PpCanvasPiece each, for focus and assistive technology */
  GPtrArray       *holes;      /* by their letters: from the left, or in a drag as before it */
  PpHangingDrag    drag;
  PpPoint          lit;
  gboolean         is_lit;
  guint            lit_timer;
};

#define PP_HANGING_HOOK_PX 8.0 /* radius of the mark */

/* hanging-view.c */
/* Where the hook is, or, of a taut wire, where it can be taken hold of. FALSE without a wire. */
gboolean pp_hanging_view_get_hook   (PpHangingView *self,
                                     PpPoint       *mm);
double   pp_hanging_view_get_hole_px (PpHangingView *self,
                                      const PpHole  *hole);
/* Of self->holes; NULL if it is gone. */
const PpHole *pp_hanging_view_get_hole (PpHangingView *self,
                                        guint          letter);
/* NULL if there is none; `letter` (out) (nullable). */
GtkWidget *pp_hanging_view_find_child (PpHangingView *self,
                                       const char    *hole,
                                       guint         *letter);
/* Works out anew how it hangs, and shows it. */
void     pp_hanging_view_follow     (PpHangingView *self);

/* hanging-view-draw.c */
void     pp_hanging_view_snapshot   (GtkWidget     *widget,
                                     GtkSnapshot   *snapshot);
void     pp_hanging_view_drop       (PpHangingView *self);

/* hanging-view-ink.c, in px */
void     pp_hanging_view_draw_measures (PpHangingView   *self,
                                        cairo_t         *cr,
                                        const PpPalette *palette);
void     pp_hanging_view_draw_words (PpHangingView   *self,
                                     cairo_t         *cr,
                                     const PpPalette *palette);

/* hanging-view-drag.c */
void     pp_hanging_view_add_pointer (PpHangingView *self);
void     pp_hanging_view_forget_drag (PpHangingView *self);

G_END_DECLS
