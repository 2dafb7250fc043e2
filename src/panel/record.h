/* record.h: the parts of a panel: background, fused parts, holes, wire, pieces, placements, ...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is an immutable record, counted atomically, whose fields are read directly through a
 * pointer to const. It is made from a draft: a struct on the stack, filled from
 * pp_X_draft() (the defaults of the file) or from an existing record by plain assignment,
 * changed, and handed to pp_X_new(), which checks every value and copies the strings; a draft
 * owns nothing. Shared parts (outlines, art, height grids) are referenced, not copied.
 *
 *     PpHole draft = *hole;
 *     draft.x = 40;
 *     g_autoptr (PpHole) moved = pp_hole_new (&draft, &error);
 *
 * Doubles that the file may leave null are NAN then; strings that it may leave null are NULL,
 * other strings are never NULL. `extra` (nullable) holds the members that the program does not
 * know, as JSON text without braces, for writing them back.
 *
 * Every pp_X_new() returns (transfer full), or NULL with PP_PANEL_ERROR_VALUE and a message that
 * begins with the name of the member; a pp_X_ref() takes and gives the same record.
 */
#pragma once

#include "panel/form.h"
#include "panel/glass.h"
#include "panel/outline.h"

G_BEGIN_DECLS

/* Of an id: one or more of A-Z a-z 0-9 _ -, and none of "background", "wire", "hook",
 * "adhesive". */
#define PP_ID_MAX_LENGTH 64

typedef enum
{
  PP_SHAPE_RECTANGLE,
  PP_SHAPE_ELLIPSE,
  PP_SHAPE_ARCH,
  PP_SHAPE_FREE,
} PpBackgroundShape;

#define PP_BACKGROUND_MAX_SIDE 3000.0 /* mm; no hole or knot is wider */
#define PP_OUTLINE_MAX_SIDE 5000.0    /* mm; of pieces, fused parts and inserts, so that the cells
                                       * of one outline fit into memory */
#define PP_FARTHEST 10000.0           /* mm: no hole and no outline of glass reaches farther from
                                       * the origin of its frame, across or down */
#define PP_WIRE_MAX_LENGTH 60000.0    /* mm, since it is judged half millimetre by half millimetre;
                                       * more than twice from one farthest hole to the other */

typedef struct
{
  PpBackgroundShape shape;
  double            width;         /* mm; of the bounding box, set for every shape */
  double            height;        /* mm */
  double            corner_radius; /* mm; rectangle: 0 to half its shorter side */
  double            thickness;     /* mm, more than 0 */
  const PpOutline  *outline;       /* free, else NULL */
  PpGlass           glass;
  const char       *extra;
} PpBackground;

/* The defaults; width, height, thickness and (free) outline must be set. pp_background_new()
 * takes width and height of a free one from its outline. */
PpBackground  pp_background_draft (void);
PpBackground *pp_background_new   (const PpBackground *draft, GError **error);
PpBackground *pp_background_ref   (const PpBackground *self);
void          pp_background_unref (const PpBackground *self);
/* A free one keeps the frame its outline is written in; all others begin at 0, 0. */
PpBox         pp_background_get_box (const PpBackground *self);

/* Where stems stand: the space an insert keeps open in the kiln. */
typedef struct
{
  double           insert_thickness; /* mm, more than 0 */
  double           gap;              /* mm, as gauged after firing; NAN: not gauged */
  const PpOutline *insert;           /* panel frame */
  const char      *extra;
} PpPocket;

typedef enum
{
  PP_ROLE_NONE,
  PP_ROLE_VASE,
  PP_ROLE_SHAPE,
} PpRole;

/* Glass fused onto the front of the background in the kiln. */
typedef struct
{
  const char      *id;
  const char      *name;
  PpRole           role;
  double           thickness; /* mm, more than 0 */
  const PpOutline *outline;   /* panel frame */
  PpGlass          glass;
  gboolean         has_pocket;
  PpPocket         pocket;    /* if has_pocket */
  const char      *extra;
} PpFused;

PpFused  pp_fused_draft (void);
PpFused *pp_fused_new   (const PpFused *draft, GError **error);
PpFused *pp_fused_ref   (const PpFused *self);
void     pp_fused_unref (const PpFused *self);

/* What it is called in a sentence: its name, or its id where that is empty. (transfer none) */
static inline const char *
pp_fused_get_title (const PpFused *self)
{
  return *self->name != '\0' ? self->name : self->id;
}

typedef struct
{
  const char *id;
  double      x; /* mm, centre, panel frame */
  double      y;
  double      diameter; /* mm, more than 0 */
  gboolean    drilled;
  const char *extra;
} PpHole;

PpHole  pp_hole_draft (void);
PpHole *pp_hole_new   (const PpHole *draft, GError **error);
PpHole *pp_hole_ref   (const PpHole *self);
void    pp_hole_unref (const PpHole *self);

typedef struct
{
  const char *from;           /* ids of two different holes */
  const char *to;
  const char *knotted_at;     /* RFC 3339, or NULL */
  double      length;         /* mm from hole to hole as it hangs; NAN: straight, taut */
  double      diameter;       /* mm; 1.2 */
  double      tail;           /* mm beyond each knot; 40 */
  double      knot_diameter;  /* mm; 8 */
  double      knot_height;    /* mm; 3 */
  double      safe_load;      /* N; NAN: unknown */
  double      breaking_load;  /* N; NAN: unknown */
  double      friction;       /* wire on hook; 0.2 */
  double      mass_per_metre; /* g; 4 */
  const char *extra;
} PpWire;

PpWire  pp_wire_draft (void);
PpWire *pp_wire_new   (const PpWire *draft, GError **error);
PpWire *pp_wire_ref   (const PpWire *self);
void    pp_wire_unref (const PpWire *self);

/* Whether it is knotted in the hole of that id, or will be; a wire that is NULL never is. */
static inline gboolean
pp_wire_ends_in (const PpWire *self, const char *hole)
{
  return self != NULL && (g_str_equal (self->from, hole) || g_str_equal (self->to, hole));
}

typedef enum
{
  PP_PLACE_WALL,
  PP_PLACE_WINDOW,
} PpPlace;

/* Where the panel hangs and from where it is seen. */
typedef struct
{
  PpPlace     place;
  double      sideways;    /* degrees, 0 to under 90; 30 */
  double      updown;      /* degrees, 0 to under 90; 15 */
  double      hook_rating; /* kg; NAN: unknown */
  const char *extra;
} PpDisplay;

PpDisplay  pp_display_draft (void);
PpDisplay *pp_display_new   (const PpDisplay *draft, GError **error);
PpDisplay *pp_display_ref   (const PpDisplay *self);
void       pp_display_unref (const PpDisplay *self);

typedef struct
{
  const char *name;
  double      working_life;   /* min, more than mixing; 5 */
  double      mixing;         /* min; 1 */
  double      grab;           /* min; 10 */
  double      hard;           /* min; 60 */
  double      cure;           /* min; 1440 */
  double      sitting;        /* min; NAN: no end */
  double      ratio[2];       /* parts A and B by volume, each more than 0 */
  double      density;        /* g/ml; 1.15 */
  double      largest_mix;    /* ml; 6 */
  double      smallest_mix;   /* ml; 2 */
  double      fill_gap;       /* mm; 1.5 */
  double      working_stress; /* MPa; 0.5 */
  const char *extra;
} PpAdhesive;

PpAdhesive  pp_adhesive_draft (void);
PpAdhesive *pp_adhesive_new   (const PpAdhesive *draft, GError **error);
PpAdhesive *pp_adhesive_ref   (const PpAdhesive *self);
void        pp_adhesive_unref (const PpAdhesive *self);

typedef enum
{
  PP_KIND_FLOWER,
  PP_KIND_BUD,
  PP_KIND_LEAF,
  PP_KIND_STEM,
  PP_KIND_FILLER,
} PpKind;

#define PP_PIECE_MAX_ART (8 * 1024 * 1024) /* bytes */

/* A kind of piece on the tray; placements are its copies on the glass. */
typedef struct
{
  const char      *id;
  const char      *name;
  PpKind           kind;
  guint            count;         /* on the tray and on the glass together; 1 */
  double           thickness;     /* mm, more than 0 */
  double           mass;          /* g as weighed; NAN: from its volume */
  double           density;       /* kg/m³; 2500 */
  double           transmittance; /* 0 to 1; 0 */
  const char      *colour;        /* #rrggbb */
  PpForm           form;
  PpCrown          crown;
  const PpOutline *outline;       /* its own frame */
  GBytes          *art;           /* UTF-8 SVG text in its own frame, not ended by NUL; or NULL */
  const char      *box;           /* id in the maker's box, or NULL */
  const char      *extra;
} PpPiece;

PpPiece  pp_piece_draft (void);
PpPiece *pp_piece_new   (const PpPiece *draft, GError **error);
PpPiece *pp_piece_ref   (const PpPiece *self);
void     pp_piece_unref (const PpPiece *self);

/* Likewise. (transfer none) */
static inline const char *
pp_piece_get_title (const PpPiece *self)
{
  return *self->name != '\0' ? self->name : self->id;
}

/* X = x + m·u·cos r - v·sin r, Y = y + m·u·sin r + v·cos r, m = -1 if mirrored. */
typedef struct
{
  const char *id;
  const char *piece;    /* id of a tray piece */
  double      x;        /* mm, where the piece's origin lies in the panel frame */
  double      y;
  double      rotation; /* degrees clockwise, kept as given */
  gboolean    mirrored;
  const char *group;    /* name, or NULL */
  const char *pocket;   /* id of the fused part in whose pocket it stands, or NULL */
  gboolean    pinned;
  const char *glued_at; /* RFC 3339, or NULL */
  const char *extra;
} PpPlacement;

PpPlacement  pp_placement_draft (void);
PpPlacement *pp_placement_new   (const PpPlacement *draft, GError **error);
PpPlacement *pp_placement_ref   (const PpPlacement *self);
void         pp_placement_unref (const PpPlacement *self);

typedef enum
{
  PP_LOG_MIXED,
  PP_LOG_PLACED,
  PP_LOG_TAKEN_BACK,
  PP_LOG_FELL,
  PP_LOG_BROKE,
  PP_LOG_MOVED,
  PP_LOG_PAUSED,
} PpLogWhat;

/* Something that happened at the bench. */
typedef struct
{
  const char         *at; /* RFC 3339 */
  PpLogWhat           what;
  const char * const *about; /* ids, ended by NULL */
  const char         *extra;
} PpLogEntry;

PpLogEntry  pp_log_entry_draft (void);
PpLogEntry *pp_log_entry_new   (const PpLogEntry *draft, GError **error);
PpLogEntry *pp_log_entry_ref   (const PpLogEntry *self);
void        pp_log_entry_unref (const PpLogEntry *self);

/* A finding the maker knows of and wants kept quiet. */
typedef struct
{
  const char         *code;
  const char * const *about; /* ids as a set, ended by NULL */
  const char         *extra;
} PpQuiet;

PpQuiet  pp_quiet_draft (void);
PpQuiet *pp_quiet_new   (const PpQuiet *draft, GError **error);
PpQuiet *pp_quiet_ref   (const PpQuiet *self);
void     pp_quiet_unref (const PpQuiet *self);

/* Whether it is of a finding of that code about the same set of ids, ended by NULL. */
gboolean pp_quiet_is_of (const PpQuiet *self, const char *code, const char * const *about);

/* A list with the same records, to be changed before it becomes part of a panel; `ref` and `unref`
 * are those of their type. (transfer full) */
typedef gpointer (*PpRecordRef) (gconstpointer record);
GPtrArray *pp_records_copy (const GPtrArray *list, PpRecordRef ref, GDestroyNotify unref);

/* Names as in the file ("rectangle", "vase", "window", "flower", "taken-back"); (transfer none).
 * The _from_name() forms return FALSE for a name that is not one; "" is PP_ROLE_NONE's. */
const char *pp_background_shape_get_name  (PpBackgroundShape shape);
gboolean    pp_background_shape_from_name (const char *name, PpBackgroundShape *shape);
const char *pp_role_get_name              (PpRole role);
gboolean    pp_role_from_name             (const char *name, PpRole *role);
const char *pp_place_get_name             (PpPlace place);
gboolean    pp_place_from_name            (const char *name, PpPlace *place);
const char *pp_kind_get_name              (PpKind kind);
gboolean    pp_kind_from_name             (const char *name, PpKind *kind);
const char *pp_log_what_get_name          (PpLogWhat what);
gboolean    pp_log_what_from_name         (const char *name, PpLogWhat *what);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpBackground, pp_background_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpFused, pp_fused_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpHole, pp_hole_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpWire, pp_wire_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpDisplay, pp_display_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpAdhesive, pp_adhesive_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPiece, pp_piece_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpPlacement, pp_placement_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpLogEntry, pp_log_entry_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpQuiet, pp_quiet_unref)

G_END_DECLS
