/* glance.h: a quick look at what would be hidden, before anything is asked in earnest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A search looks at many moves and can check few. The glance holds probes along the hung wire,
 * straight on and aslant, and over knots and holes, and for each of them how dark it is there. A
 * moved piece is taken out and put back elsewhere at the height at which it lay; nothing settles
 * anew. So it is an estimate, used to choose what to check and for nothing else.
 *
 * Threads may share one: it reads nothing but values that never change.
 */
#pragma once

#include "advise/move.h"
#include "check/check.h"
#include "check/cover.h"

G_BEGIN_DECLS

typedef enum
{
  PP_PROBE_WIRE,        /* straight on, with both edges */
  PP_PROBE_BARELY,      /* and as far around as pieces may land off */
  PP_PROBE_ASLANT,
  PP_PROBE_DISC,        /* a point of a knot or hole */
  PP_PROBE_DISC_BARELY,
} PpProbeKind;

/* A set of them: bits 1 << PpProbeKind. */
typedef guint PpProbes;

/* Covered by a piece that covers all its points. */
typedef struct
{
  PpProbeKind kind;
  guint       which;  /* view, or disc: the holes as in the panel */
  guint       n;
  PpPoint     points[5];
  PpPoint     slant;  /* mm in plan a mm of height */
  double      length; /* mm of wire it stands for; of a disc its share */
  gint32      bare;   /* how dark it is without any piece */
} PpProbe;

/* A tray piece in its own frame. */
typedef struct
{
  PpCover   cover;
  PpBands  *bands;
  PpHeights heights;
  PpPoint   centroid;
  double    middle; /* mm, height of its middle over its base, about */
  gint32    dark;
} PpGlancePiece;

typedef struct
{
  guint        piece; /* index in the tray */
  double       base;  /* mm, height of its base plane at the centroid */
  double       a;     /* its slopes */
  double       b;
  gboolean     counts; /* does not float */
} PpGlanceBody;

/* How dark it must be to count as hidden. */
#define PP_DARK 65536

typedef struct
{
  const PpPanel *panel;
  guint          n_probes;
  PpProbe       *probes;
  guint          n_pieces;
  PpGlancePiece *pieces;
  guint          n_bodies;
  PpGlanceBody  *bodies;
  guint8        *covers; /* of each body each probe */
  gint32        *dark;   /* of each probe, all bodies together */
  double         length; /* mm of the hung wire */
  PpScene       *scene;
} PpGlance;

/* (transfer full) */
PpGlance *pp_glance_new      (const PpCheck       *check);
void      pp_glance_free     (PpGlance            *self);

/* What is seen, as a sum to be made small: mm of wire, shares of knots, views; as the search rates
 * it (weight.h). `moves` (nullable) says what lies elsewhere. */
double    pp_glance_estimate (const PpGlance      *self,
                              const PpMoves       *moves);
/* Whether a tray piece at `pose` with its base at the given height covers the probe. */
gboolean  pp_glance_covers   (const PpGlance      *self,
                              guint                piece,
                              double               base,
                              PpPose               pose,
                              const PpProbe       *probe);
/* Where the probe's line of sight passes a piece at that height, in the panel frame. */
PpPoint   pp_glance_aim      (const PpGlance      *self,
                              guint                piece,
                              double               base,
                              const PpProbe       *probe);

/* How dark it is straight on over a point with all pieces drawn in by as much as they may land off,
 * and in `bare` by glass and fused parts alone. */
gint32    pp_glance_darkness (const PpGlance      *self,
                              PpPoint              at,
                              gint32              *bare);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpGlance, pp_glance_free)

G_END_DECLS
