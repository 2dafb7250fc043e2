/* canvas-private.h: the fields of the canvas, for the files that make it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * canvas.c            the widget: document, size, zoom, what others call
 * canvas-layers.c     the two kept layers and the sprites of the pieces
 * canvas-draw.c       the snapshot: layers, what is in hand, marks
 * canvas-marks.c      what is chosen, marked; the frame and the ruler in hand
 * canvas-fused.c      what is fused onto the glass: chosen, moved, made larger
 * canvas-arrange.c    a piece in hand over and under others, and evenly among them
 * canvas-groups.c     the groups, each in a line about it
 * canvas-answers.c    wire and holes that show, heights, glue
 * canvas-pins.c       the pins of the findings
 * canvas-ink.c        lettering of all these
 * canvas-pointer.c    press, drag, scroll, drop
 * canvas-press.c      what a press takes hold of
 * canvas-drag.c       what a drag does to the panel
 * canvas-places.c     where things are: the chosen, findings, a piece put down
 * canvas-menu.c       what can be done with what is chosen, beside it
 * canvas-keys.c       arrows and the way from piece to piece
 * canvas-children.c   a child widget a placement, for focus and assistive technology
 */
#pragma once

#include "art/draw.h"
#include "art/hit.h"
#include "art/sprite.h"
#include "desk/canvas-arrange.h"
#include "desk/palette.h"
#include "panel/even.h"

G_BEGIN_DECLS

/* What the pointer is doing. */
typedef enum
{
  PP_DRAG_NONE,
  PP_DRAG_UNDECIDED, /* pressed, not yet moved far enough to mean it */
  PP_DRAG_MOVE,      /* the chosen pieces */
  PP_DRAG_TURN,      /* the one chosen piece about its origin */
  PP_DRAG_HOLE,
  PP_DRAG_GLASS,     /* its right, lower edge, or both */
  PP_DRAG_FUSED,     /* a fused part */
  PP_DRAG_VASE,      /* its sides, its top, or both */
  PP_DRAG_FRAME,     /* a frame round pieces */
  PP_DRAG_PAN,
  PP_DRAG_MEASURE,
} PpDragKind;

typedef struct
{
  PpDragKind     kind;
  PpDragKind     meant;      /* what it becomes once it has moved far enough */
  PpPoint        start_px;
  PpPoint        start;      /* mm */
  PpPoint        now;        /* mm */
  const PpPanel *panel;      /* as it was at the start; edits of a drag begin from it */
  PpZoom         zoom;       /* as it was */
  gboolean       adds;       /* Shift or Ctrl: to what is chosen already */
  gboolean       was_chosen; /* the pressed piece; a plain click then leaves it alone */
  char          *pressed;    /* id of the pressed placement, hole or fused part, or NULL */
  char         **movable;    /* PP_DRAG_MOVE: those of the chosen that do not stay put, or NULL */
  gboolean       is_editing; /* the document is taking an edit of this drag */
  gboolean       right;      /* PP_DRAG_GLASS, PP_DRAG_VASE */
  gboolean       bottom;     /* PP_DRAG_GLASS */
  gboolean       top;        /* PP_DRAG_VASE */
  gboolean       evenly;     /* PP_DRAG_MOVE: Shift is held */
  PpEven         even;       /* then: where it stands evenly */
  char          *said;       /* what it has gone over or under, or NULL */
} PpDrag;

struct _PpCanvas
{
  GtkWidget      parent_instance;
  PpDocument    *document;
  PpZoom         zoom;
  gboolean       is_fitted;    /* and so fits again when the window changes */
  PpLook         look;
  gboolean       measuring;
  PpPoint        pointer;      /* mm */
  gboolean       has_pointer;
  int            lit;          /* the finding being shown, or -1 */
  char          *lit_key;      /* by which it is found again in the next check, or NULL */
  guint          lit_timer;

  PpScene       *scene;        /* of the layers; not the present one during a drag */
  GHashTable    *sprites;      /* id of a placement: PpSprite */
  GskRenderNode *below;        /* glass and what lies under what is in hand */
  GskRenderNode *above;        /* what lies over it, or NULL */
  GskRenderNode *marks;
  PpZoom         layers_zoom;  /* with which the layers were made */
  gboolean       layers_stale;
  gboolean       marks_stale;
  int            allocated[2]; /* px, width and height */
  guint          marks_timer;  /* in a drag: the marks are made anew at its end */
  guint          settle_timer; /* zooming: the layers are made anew once it rests */

  PpDrag         drag;
  PpPoint        measured[2];  /* mm; the distance last measured */
  gboolean       has_measured;
  gboolean       panning;      /* Space is held */

  GHashTable    *children;     /* id of a placement: PpCanvasPiece */
  GPtrArray     *order;        /* of children, as placements */
  GtkWidget     *menu;         /* while it is open */
  char          *focused;      /* id of the piece that has or last had the focus */
};

#define PP_CANVAS_MARGIN 36 /* px about the glass when it is fitted */

/* canvas.c */
void      pp_canvas_set_zoom        (PpCanvas *self, PpZoom zoom, gboolean is_fitted);
PpBox     pp_canvas_get_glass_box   (PpCanvas *self);

/* canvas-layers.c */
void      pp_canvas_drop_layers     (PpCanvas *self);
void      pp_canvas_ensure_layers   (PpCanvas *self, int width, int height);
/* A surface as large as the canvas, to draw on in widget px, and the node that lays it down. Ends
 * by taking the surface. (transfer full) */
cairo_t  *pp_canvas_begin_layer     (PpCanvas *self, cairo_format_t format, int width, int height,
                                     cairo_surface_t **surface);
GskRenderNode *pp_canvas_end_layer  (cairo_surface_t *surface, int width, int height);
/* TRUE while the piece is drawn by itself, between the layers. */
gboolean  pp_canvas_is_in_hand      (PpCanvas *self, const char *id);
/* NULL if it would be too large; it is then drawn by pp_canvas_draw_large(). */
PpSprite *pp_canvas_get_sprite      (PpCanvas *self, const PpBody *body, gboolean in_pocket);
/* `shift`: mm */
void      pp_canvas_draw_large      (PpCanvas *self, cairo_t *cr, const PpBody *body, PpPoint shift,
                                     gboolean in_pocket);

/* canvas-draw.c */
void      pp_canvas_snapshot        (GtkWidget *widget, GtkSnapshot *snapshot);

/* canvas-ink.c, in widget px */
PpPoint   pp_canvas_to_px           (PpCanvas *self, double x, double y);
/* `text` on a slip of paper with its middle at `px`. */
void      pp_canvas_draw_slip       (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                     const char *text, PpPoint px);
void      pp_canvas_draw_length     (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                     double mm, PpPoint px);
/* The same, a little up or down where it would lie on one of `taken` (PpBox), and added to it. */
void      pp_canvas_draw_slip_clear (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                     const char *text, PpPoint px, GArray *taken);
void      pp_canvas_draw_length_clear (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                       double mm, PpPoint px, GArray *taken);

/* canvas-answers.c */
void      pp_canvas_draw_answers    (PpCanvas *self, cairo_t *cr, const PpPalette *palette);

/* canvas-groups.c */
/* What is written keeps off `taken` (PpBox, widget px), and is added to it. */
void      pp_canvas_draw_groups     (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                     GArray *taken);

/* canvas-pins.c */
void      pp_canvas_draw_pins       (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
/* Where the pins with numbers stand: PpBox, widget px. */
void      pp_canvas_add_pin_boxes   (PpCanvas *self, GArray *boxes);
/* The finding whose pin is at a widget px, or -1. A small mark over a piece is not in the way of a
 * hand that takes the piece. */
int       pp_canvas_hit_pin         (PpCanvas *self, PpPoint px, gboolean over_piece);

/* canvas-marks.c */
void      pp_canvas_draw_marks      (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
void      pp_canvas_draw_chosen     (PpCanvas *self, cairo_t *cr, const PpPalette *palette,
                                     const PpBody *body);
void      pp_canvas_draw_frame      (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
void      pp_canvas_draw_measured   (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
/* Adds an outline to the path, `carried` mm from where it is. */
void      pp_canvas_add_outline     (PpCanvas *self, cairo_t *cr, const PpOutline *outline,
                                     PpPoint carried);
/* A square to take hold of. */
void      pp_canvas_draw_handle     (cairo_t *cr, const PpPalette *palette, PpPoint px);
/* Where the handle that turns the one chosen piece is; FALSE if there is none. */
gboolean  pp_canvas_get_turn_handle (PpCanvas *self, PpPoint *px);

/* canvas-fused.c */
void      pp_canvas_draw_chosen_fused (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
/* Whether a handle of the chosen fused part is at `px`, and which sides it moves. */
gboolean  pp_canvas_hit_vase_handle (PpCanvas *self, PpPoint px, gboolean *right, gboolean *top);
/* What a drag does: moves the pressed part, or makes the chosen one wider or taller. */
void      pp_canvas_move_fused      (PpCanvas *self);
void      pp_canvas_reshape_vase    (PpCanvas *self);

/* canvas-arrange.c */
/* How far a drag of the chosen pieces moves them, mm: where Shift is held to where they stand
 * evenly among those that are not `moving`. */
PpPoint   pp_canvas_drag_evenly     (PpCanvas *self, const char * const *moving);
/* The lines that say how it stands evenly, and what it has gone over or under. */
void      pp_canvas_draw_evenly     (PpCanvas *self, cairo_t *cr, const PpPalette *palette);
void      pp_canvas_draw_said       (PpCanvas *self, cairo_t *cr, const PpPalette *palette);

/* canvas-pointer.c */
void      pp_canvas_add_pointer     (PpCanvas *self);

/* canvas-press.c */
/* Chooses what lies at `px` and sets what a drag from there means. */
void      pp_canvas_press           (PpCanvas *self, PpPoint px);
/* Chooses what lies at `px`, for the menu about it. */
void      pp_canvas_press_for_menu  (PpCanvas *self, PpPoint px);
/* The name of the cursor that says what could be taken hold of. */
const char *pp_canvas_get_cursor    (PpCanvas *self, PpPoint px);
/* From the side or from behind, where nothing can be moved. */
gboolean  pp_canvas_is_aslant       (PpCanvas *self);

/* canvas-drag.c */
void      pp_canvas_drag_begin      (PpCanvas *self, PpPoint px, gboolean adds, gboolean pan);
void      pp_canvas_drag_update     (PpCanvas *self, PpPoint px, gboolean steps);
/* As pp_document_take(), for an edit of the drag. */
void      pp_canvas_drag_take       (PpCanvas *self, PpPanel *next, GError *error,
                                     const char *label);
/* Lets go and leaves all as it is. */
void      pp_canvas_drag_forget     (PpCanvas *self);
void      pp_canvas_drag_end        (PpCanvas *self);
/* Puts all back as it was at the start. */
void      pp_canvas_drag_cancel     (PpCanvas *self);

/* canvas-places.c */
/* The finding at `index` (-1: none) is lit. */
void      pp_canvas_set_lit         (PpCanvas *self, int index);
GdkRectangle pp_canvas_to_rectangle (PpCanvas *self, PpBox mm);
/* Lays a piece of the tray with its origin at `mm`, chosen and with the focus. */
void      pp_canvas_put             (PpCanvas *self, const char *piece, PpPoint mm);

/* canvas-keys.c */
void      pp_canvas_add_keys        (PpCanvas *self);

/* canvas-menu.c */
void      pp_canvas_open_menu       (PpCanvas *self, PpPoint px);
void      pp_canvas_open_menu_by_key (PpCanvas *self);

/* canvas-children.c */
void      pp_canvas_sync_children   (PpCanvas *self);
void      pp_canvas_describe_children (PpCanvas *self);
void      pp_canvas_select_children (PpCanvas *self);
void      pp_canvas_allocate_children (PpCanvas *self);
void      pp_canvas_drop_children   (PpCanvas *self);
gboolean  pp_canvas_focus           (GtkWidget *widget, GtkDirectionType direction);
void      pp_canvas_focus_piece     (PpCanvas *self, const char *id);

/* The body of a placement in the scene of the layers, or NULL. */
static inline const PpBody *
pp_canvas_find_body (PpCanvas   *self,
                     const char *id)
{
  guint index;

  if (self->scene == NULL || pp_panel_find_placement (self->scene->panel, id, &index) == NULL)
    return NULL;
  return self->scene->bodies[index];
}

/* How far a piece in hand is from where the scene of the layers has it, mm. */
static inline PpPoint
pp_canvas_get_carried (PpCanvas     *self,
                       const PpBody *body)
{
  const PpPlacement *now;

  now = pp_panel_find_placement (pp_document_get_panel (self->document), body->placement->id, NULL);
  if (now == NULL)
    return (PpPoint) { 0, 0 };
  return (PpPoint) { now->x - body->placement->x, now->y - body->placement->y };
}

static inline PpViewFrom
pp_canvas_get_view (PpCanvas *self)
{
  return (PpViewFrom) { self->look.sideways, 0, self->look.from_behind };
}

G_END_DECLS
