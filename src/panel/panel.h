/* panel.h: the document: one panel of glass with all that lies on it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value: immutable, counted atomically, safe to hand to another thread. An edit (edit.h) makes
 * the next panel, which shares every record that did not change. Made from a draft like the
 * records it holds (record.h); pp_panel_new() checks what one record alone cannot know: that ids
 * stand once, and that what is named is there.
 */
#pragma once

#include "panel/limits.h"
#include "panel/record.h"

G_BEGIN_DECLS

#define PP_PANEL_MAX_FUSED 64
#define PP_PANEL_MAX_HOLES 64
#define PP_PANEL_MAX_TRAY 2000
#define PP_PANEL_MAX_PLACEMENTS 2000

typedef enum
{
  PP_UNITS_MM,
  PP_UNITS_INCH, /* "in" in the file */
} PpUnits;

/* As in the file: "mm", "in". (transfer none) */
const char *pp_units_get_name  (PpUnits     units);
gboolean    pp_units_from_name (const char *name,
                                PpUnits    *units);

/* The arrays hold records of the type their name says, (transfer none) for the reader; none is
 * ever NULL, and nobody changes one that is part of a panel. */
typedef struct
{
  const char          *title;
  const char          *maker;
  const char          *note;
  const char          *created;    /* RFC 3339 date or date and time, or "" */
  PpUnits              units;      /* how lengths are shown */
  const PpBackground  *background;
  GPtrArray           *fused;
  GPtrArray           *holes;
  const PpWire        *wire;       /* NULL: no wire */
  const PpDisplay     *display;
  const PpAdhesive    *adhesive;
  GPtrArray           *tray;
  GPtrArray           *placements; /* stacking order, bottom first */
  const char * const  *plan;       /* accepted order of jobs, ended by NULL; NULL: none */
  const char          *plan_extra;
  GPtrArray           *log;        /* oldest first */
  PpLimits             limits;
  const char          *limits_extra;
  GPtrArray           *quiet;
  guint                next_id;    /* no id made by the program has had this number or one above */
  const char          *extra;
} PpPanel;

/* An empty panel but for `background`, which must be set; its arrays are NULL, taken as empty. */
PpPanel         pp_panel_draft                  (void);
/* Checks and copies `draft`; arrays and records are referenced. next_id is raised above every
 * number in use. Returns (transfer full).
 * Errors: PP_PANEL_ERROR_DUPLICATE, _REFERENCE, _LIMIT, _VALUE; the message begins with the JSON
 * path of the place ("placements[3].piece: ..."). */
PpPanel        *pp_panel_new                    (const PpPanel *draft,
                                                 GError       **error);
PpPanel        *pp_panel_ref                    (const PpPanel *self);
void            pp_panel_unref                  (const PpPanel *self);

/* The i-th record of each array, (transfer none); i is below the array's len. */
static inline const PpFused *
pp_panel_fused (const PpPanel *self, guint i)
{
  return g_ptr_array_index (self->fused, i);
}

static inline const PpHole *
pp_panel_hole (const PpPanel *self, guint i)
{
  return g_ptr_array_index (self->holes, i);
}

static inline const PpPiece *
pp_panel_piece (const PpPanel *self, guint i)
{
  return g_ptr_array_index (self->tray, i);
}

static inline const PpPlacement *
pp_panel_placement (const PpPanel *self, guint i)
{
  return g_ptr_array_index (self->placements, i);
}

/* By id: (transfer none), or NULL and `index` (nullable) untouched where there is none. */
const PpFused     *pp_panel_find_fused          (const PpPanel *self, const char *id, guint *index);
const PpHole      *pp_panel_find_hole           (const PpPanel *self, const char *id, guint *index);
const PpPiece     *pp_panel_find_piece          (const PpPanel *self, const char *id, guint *index);
const PpPlacement *pp_panel_find_placement      (const PpPanel *self, const char *id, guint *index);
/* The tray piece of a placement of this panel; never NULL. Constant time. */
const PpPiece     *pp_panel_get_piece_of        (const PpPanel *self, const PpPlacement *placement);

/* The panel's own value, else the default; PP_LIMIT_OPAQUE: 0.35 on a wall, 0.15 in a window. */
double             pp_panel_get_limit           (const PpPanel *self, PpLimit limit);
/* As the background's where the fused part does not say. kg/m³, /K. */
double             pp_panel_get_fused_density   (const PpPanel *self, const PpFused *fused);
double             pp_panel_get_fused_expansion (const PpPanel *self, const PpFused *fused);
/* Of the wire's two holes, centre to centre: mm from one to the other, and the point midway. The
 * panel has a wire. */
double             pp_panel_get_hole_distance   (const PpPanel *self);
PpPoint            pp_panel_get_hole_middle     (const PpPanel *self);
/* mm of wire from hole to hole: a taut one is as long as they are apart. 0 without a wire. */
double             pp_panel_get_wire_length     (const PpPanel *self);
/* How many placements there are of a tray piece. */
guint              pp_panel_count_placed        (const PpPanel *self, const char *piece_id);
/* Whether `quiet` names this code with the same set of ids. `about` is ended by NULL. */
gboolean           pp_panel_is_quiet            (const PpPanel *self, const char *code,
                                                 const char * const *about);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPanel, pp_panel_unref)

G_END_DECLS
