/* tray-row-private.h: what the files of the tray's row share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "desk/tray-compartment.h"
#include "desk/tray-row.h"

G_BEGIN_DECLS

struct _PpTrayRow
{
  GtkWidget        parent_instance;
  GtkAdjustment   *adjustment;
  PpTrayGauge     *gauge;
  double           scale;        /* of the canvas, px a mm */
  const PpPanel   *panel;        /* shown; NULL: none */
  PpGallery       *gallery;      /* with whose art; nullable */
  GHashTable      *compartments; /* id of a piece to its compartment, a child */
  GPtrArray       *order;        /* compartments from left to right */
  GtkWidget       *last;         /* the one that had the focus last, of `order`; NULL: none */
  GtkWidget       *come;         /* of `order`, to be scrolled to once it has a place; NULL: none */
  GString         *typed;        /* beginning of a name, lower case */
  gint64           typed_at;     /* monotonic µs */
  cairo_surface_t *grain;        /* of the wood, for the height and scale factor below */
  int              grain_height;
  int              grain_factor;
};

static inline GtkWidget *
pp_tray_row_get (PpTrayRow *self,
                 guint      i)
{
  return g_ptr_array_index (self->order, i);
}

static inline PpKind
pp_tray_row_get_kind (PpTrayRow *self,
                      guint      i)
{
  return pp_tray_compartment_get_piece (PP_TRAY_COMPARTMENT (pp_tray_row_get (self, i)))->kind;
}

/* tray-row-keys.c: focus and keys. */
gboolean pp_tray_row_focus     (GtkWidget        *widget,
                                GtkDirectionType  direction);
void     pp_tray_row_bind_keys (GtkWidgetClass   *klass);
void     pp_tray_row_add_keys  (PpTrayRow        *self);
void     pp_tray_row_bring     (PpTrayRow        *self,
                                GtkWidget        *compartment);

/* tray-row-pointer.c: presses, drags and tooltips. */
gboolean pp_tray_row_query_tooltip (GtkWidget  *widget,
                                    int         x,
                                    int         y,
                                    gboolean    by_keyboard,
                                    GtkTooltip *tooltip);
void     pp_tray_row_add_pointer   (PpTrayRow  *self);

/* tray-menu.c: opens the menu of a compartment of a row. */
void     pp_tray_menu_open         (PpTrayCompartment *compartment);

/* tray-row-draw.c: the wood and what is written on it. */
void     pp_tray_row_snapshot  (GtkWidget        *widget,
                                GtkSnapshot      *snapshot);
/* Height of the wood above the compartments, px. */
int      pp_tray_row_get_head  (PpTrayRow        *self);

#define PP_TRAY_RAIL 9 /* px of wood at the ends and below */

G_END_DECLS
