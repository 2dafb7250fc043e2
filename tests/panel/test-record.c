/* test-record.c: what each record refuses and takes, and what a draft begins with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each row sets one member of a draft that is good otherwise. Defaults are those of the format's
 * page: the values its example shows, and its list of exceptions.
 */
#include "panel/panel-error.h"
#include "panel/record.h"

#include "small-panel.h"

#include <string.h>

typedef union
{
  PpBackground background;
  PpFused      fused;
  PpHole       hole;
  PpWire       wire;
  PpDisplay    display;
  PpAdhesive   adhesive;
  PpPiece      piece;
  PpPlacement  placement;
  PpLogEntry   log_entry;
  PpQuiet      quiet;
} Draft;

typedef struct
{
  const char    *name;
  void           (*fill) (Draft *draft, gboolean good); /* else as it begins */
  gpointer       (*make) (const Draft *draft, GError **error);
  gpointer       (*ref) (gconstpointer record);
  GDestroyNotify unref;
} Record;

static const PpOutline *square;
static const PpHeightGrid *grid;

static void
fill_background (Draft   *draft,
                 gboolean good)
{
  draft->background = pp_background_draft ();
  if (!good)
    return;
  draft->background.width = 300;
  draft->background.height = 420;
  draft->background.thickness = 6;
}

/* Its sizes are those of the outline, whatever the draft says. */
static void
fill_free (Draft   *draft,
           gboolean good)
{
  fill_background (draft, good);
  draft->background.shape = PP_SHAPE_FREE;
  draft->background.outline = square;
  draft->background.width = NAN;
  draft->background.height = -1;
}

static void
fill_fused (Draft   *draft,
            gboolean good)
{
  draft->fused = pp_fused_draft ();
  if (!good)
    return;
  draft->fused.id = "jug";
  draft->fused.thickness = 3;
  draft->fused.outline = square;
  draft->fused.has_pocket = TRUE;
  draft->fused.pocket.insert_thickness = 6;
  draft->fused.pocket.insert = square;
}

static void
fill_hole (Draft   *draft,
           gboolean good)
{
  draft->hole = pp_hole_draft ();
  if (good)
    draft->hole.id = "left";
}

static void
fill_wire (Draft   *draft,
           gboolean good)
{
  draft->wire = pp_wire_draft ();
  if (!good)
    return;
  draft->wire.from = "left";
  draft->wire.to = "right";
}

static void
fill_display (Draft   *draft,
              gboolean good)
{
  draft->display = pp_display_draft ();
}

static void
fill_adhesive (Draft   *draft,
               gboolean good)
{
  draft->adhesive = pp_adhesive_draft ();
}

static void
fill_piece (Draft   *draft,
            gboolean good)
{
  draft->piece = pp_piece_draft ();
  if (!good)
    return;
  draft->piece.id = "oxeye";
  draft->piece.thickness = 5;
  draft->piece.outline = square;
}

static void
fill_cupped (Draft   *draft,
             gboolean good)
{
  fill_piece (draft, good);
  draft->piece.form.kind = PP_FORM_CUPPED;
  draft->piece.form.rise = 12;
  draft->piece.crown.height = 4;
  draft->piece.crown.radius = 7;
}

static void
fill_measured (Draft   *draft,
               gboolean good)
{
  fill_piece (draft, good);
  draft->piece.form.kind = PP_FORM_MEASURED;
  draft->piece.form.grid = grid;
}

static void
fill_placement (Draft   *draft,
                gboolean good)
{
  draft->placement = pp_placement_draft ();
  if (!good)
    return;
  draft->placement.id = "p1";
  draft->placement.piece = "oxeye";
}

static void
fill_log_entry (Draft   *draft,
                gboolean good)
{
  draft->log_entry = pp_log_entry_draft ();
  if (good)
    draft->log_entry.at = "2026-05-02T14:30:00+02:00";
}

static void
fill_quiet (Draft   *draft,
            gboolean good)
{
  draft->quiet = pp_quiet_draft ();
  if (good)
    draft->quiet.code = "even-group";
}

#define RECORD(name, fill, prefix)                                                       \
  { name, fill, (gpointer (*) (const Draft *, GError **)) prefix##_new,                  \
    (gpointer (*) (gconstpointer)) prefix##_ref, (GDestroyNotify) prefix##_unref }

static const Record background = RECORD ("background", fill_background, pp_background);
static const Record free_background = RECORD ("free", fill_free, pp_background);
static const Record fused = RECORD ("fused", fill_fused, pp_fused);
static const Record hole = RECORD ("hole", fill_hole, pp_hole);
static const Record wire = RECORD ("wire", fill_wire, pp_wire);
static const Record display = RECORD ("display", fill_display, pp_display);
static const Record adhesive = RECORD ("adhesive", fill_adhesive, pp_adhesive);
static const Record piece = RECORD ("piece", fill_piece, pp_piece);
static const Record cupped = RECORD ("cupped", fill_cupped, pp_piece);
static const Record measured = RECORD ("measured", fill_measured, pp_piece);
static const Record placement = RECORD ("placement", fill_placement, pp_placement);
static const Record log_entry = RECORD ("log-entry", fill_log_entry, pp_log_entry);
static const Record quiet = RECORD ("quiet", fill_quiet, pp_quiet);

static const Record * const records[] = {
  &background, &free_background, &fused, &hole, &wire, &display, &adhesive, &piece, &cupped,
  &measured, &placement, &log_entry, &quiet,
};

/* Where a member of a number lies in its draft, and its name in the file. */
typedef struct
{
  const Record *record;
  gsize         offset;
  const char   *member;
} Member;

#define AT(record, Type, field) { &record, G_STRUCT_OFFSET (Type, field), #field }

static void
check_made (const Record *record,
            const Draft  *draft,
            const char   *member, /* NULL: is made */
            int           code)
{
  g_autoptr (GError) error = NULL;
  gpointer made = record->make (draft, &error);

  if (member == NULL)
    {
      g_assert_no_error (error);
      g_assert_nonnull (made);
      record->unref (made);
    }
  else
    {
      g_autofree char *begins = g_strdup_printf ("%s: ", member);

      g_assert_null (made);
      small_assert_error (error, code, begins);
    }
}

static void
check_number (const Member *at,
              double        value,
              gboolean      allowed)
{
  Draft draft;

  at->record->fill (&draft, TRUE);
  *(double *) G_STRUCT_MEMBER_P (&draft, at->offset) = value;
  check_made (at->record, &draft, allowed ? NULL : at->member, PP_PANEL_ERROR_VALUE);
}

/* From where a number is allowed up to where; a bound that is not allowed itself is left out. */
typedef struct
{
  Member   at;
  double   least;
  gboolean least_too;
  double   most;
  gboolean most_too;
  gboolean null_too;
} Range;

#define ANY(...) { AT (__VA_ARGS__), -INFINITY, FALSE, INFINITY, FALSE, FALSE }
#define POSITIVE(...) { AT (__VA_ARGS__), 0, FALSE, INFINITY, FALSE, FALSE }
#define POSITIVE_OR_NULL(...) { AT (__VA_ARGS__), 0, FALSE, INFINITY, FALSE, TRUE }
#define NOT_NEGATIVE(...) { AT (__VA_ARGS__), 0, TRUE, INFINITY, FALSE, FALSE }
#define NOT_NEGATIVE_OR_NULL(...) { AT (__VA_ARGS__), 0, TRUE, INFINITY, FALSE, TRUE }
#define SHARE(...) { AT (__VA_ARGS__), 0, TRUE, 1, TRUE, FALSE }

static const Range ranges[] = {
  { AT (background, PpBackground, corner_radius), 0, TRUE, 150, TRUE, FALSE },
  POSITIVE (background, PpBackground, thickness),
  POSITIVE (background, PpBackground, glass.density),
  { AT (background, PpBackground, glass.refractive_index), 1, TRUE, 10, TRUE, FALSE },
  SHARE (background, PpBackground, glass.transmittance),
  NOT_NEGATIVE (background, PpBackground, glass.expansion),
  POSITIVE (fused, PpFused, thickness),
  POSITIVE_OR_NULL (fused, PpFused, glass.density),
  { AT (fused, PpFused, glass.refractive_index), 1, TRUE, 10, TRUE, FALSE },
  SHARE (fused, PpFused, glass.transmittance),
  NOT_NEGATIVE_OR_NULL (fused, PpFused, glass.expansion),
  POSITIVE (fused, PpFused, pocket.insert_thickness),
  NOT_NEGATIVE_OR_NULL (fused, PpFused, pocket.gap),
  { AT (hole, PpHole, x), -10000, TRUE, 10000, TRUE, FALSE },
  { AT (hole, PpHole, y), -10000, TRUE, 10000, TRUE, FALSE },
  { AT (hole, PpHole, diameter), 0, FALSE, 3000, TRUE, FALSE },
  NOT_NEGATIVE_OR_NULL (wire, PpWire, length),
  POSITIVE (wire, PpWire, diameter),
  NOT_NEGATIVE (wire, PpWire, tail),
  { AT (wire, PpWire, knot_diameter), 0, FALSE, 3000, TRUE, FALSE },
  NOT_NEGATIVE (wire, PpWire, knot_height),
  POSITIVE_OR_NULL (wire, PpWire, safe_load),
  POSITIVE_OR_NULL (wire, PpWire, breaking_load),
  NOT_NEGATIVE (wire, PpWire, friction),
  NOT_NEGATIVE (wire, PpWire, mass_per_metre),
  { AT (display, PpDisplay, sideways), 0, TRUE, 90, FALSE, FALSE },
  { AT (display, PpDisplay, updown), 0, TRUE, 90, FALSE, FALSE },
  POSITIVE_OR_NULL (display, PpDisplay, hook_rating),
  { AT (adhesive, PpAdhesive, working_life), 1, FALSE, INFINITY, FALSE, FALSE },
  NOT_NEGATIVE (adhesive, PpAdhesive, grab),
  NOT_NEGATIVE (adhesive, PpAdhesive, hard),
  NOT_NEGATIVE (adhesive, PpAdhesive, cure),
  POSITIVE_OR_NULL (adhesive, PpAdhesive, sitting),
  { { &adhesive, G_STRUCT_OFFSET (PpAdhesive, ratio), "ratio" }, 0, FALSE, INFINITY, FALSE, FALSE },
  { { &adhesive, G_STRUCT_OFFSET (PpAdhesive, ratio) + sizeof (double), "ratio" }, 0, FALSE,
    INFINITY, FALSE, FALSE },
  POSITIVE (adhesive, PpAdhesive, density),
  POSITIVE (adhesive, PpAdhesive, largest_mix),
  NOT_NEGATIVE (adhesive, PpAdhesive, smallest_mix),
  NOT_NEGATIVE (adhesive, PpAdhesive, fill_gap),
  POSITIVE (adhesive, PpAdhesive, working_stress),
  POSITIVE (piece, PpPiece, thickness),
  POSITIVE_OR_NULL (piece, PpPiece, mass),
  POSITIVE (piece, PpPiece, density),
  SHARE (piece, PpPiece, transmittance),
  NOT_NEGATIVE (piece, PpPiece, crown.height),
  NOT_NEGATIVE (cupped, PpPiece, form.rise),
  NOT_NEGATIVE (cupped, PpPiece, form.foot),
  NOT_NEGATIVE_OR_NULL (cupped, PpPiece, form.flat),
  NOT_NEGATIVE (cupped, PpPiece, crown.height),
  POSITIVE (cupped, PpPiece, crown.radius),
  ANY (placement, PpPlacement, x),
  ANY (placement, PpPlacement, y),
  ANY (placement, PpPlacement, rotation),
};

/* A crown's height says whether its radius counts, so that of a flat piece must not be set. */
static gboolean
needs_radius (const Range *range)
{
  return range->at.record == &piece && g_str_equal (range->at.member, "crown.height");
}

/* Any number may be as large as a panel is. */
#define LARGE 3000.0

static void
test_range (gconstpointer data)
{
  const Range *range = data;
  const Member *at = &range->at;
  double least = isfinite (range->least) ? range->least : -LARGE;
  double most = isfinite (range->most) ? range->most : LARGE;

  check_number (at, range->least, range->least_too);
  check_number (at, range->most, range->most_too);
  if (isfinite (range->least))
    check_number (at, nextafter (least, -INFINITY), FALSE);
  if (isfinite (range->most))
    check_number (at, nextafter (most, INFINITY), FALSE);
  if (!needs_radius (range))
    {
      check_number (at, nextafter (least, INFINITY), TRUE);
      check_number (at, nextafter (most, -INFINITY), TRUE);
    }
  check_number (at, NAN, range->null_too);
  check_number (at, INFINITY, FALSE);
  check_number (at, -INFINITY, FALSE);
}

typedef struct
{
  Member      at;
  const char *value;
  gboolean    allowed;
} Text;

#define LONG_64 "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-"

static const Text texts[] = {
  { AT (hole, PpHole, id), "left", TRUE },
  { AT (hole, PpHole, id), "7", TRUE },
  { AT (hole, PpHole, id), "-_", TRUE },
  { AT (hole, PpHole, id), LONG_64, TRUE },
  { AT (hole, PpHole, id), "Wire", TRUE },
  { AT (hole, PpHole, id), "hooks", TRUE },
  { AT (hole, PpHole, id), LONG_64 "x", FALSE },
  { AT (hole, PpHole, id), "", FALSE },
  { AT (hole, PpHole, id), NULL, FALSE },
  { AT (hole, PpHole, id), "left hole", FALSE },
  { AT (hole, PpHole, id), "knot:left", FALSE },
  { AT (hole, PpHole, id), "b\xc3\xa4r", FALSE },
  { AT (hole, PpHole, id), "background", FALSE },
  { AT (hole, PpHole, id), "wire", FALSE },
  { AT (hole, PpHole, id), "hook", FALSE },
  { AT (hole, PpHole, id), "adhesive", FALSE },
  { AT (fused, PpFused, id), "hook", FALSE },
  { AT (piece, PpPiece, id), "", FALSE },
  { AT (placement, PpPlacement, id), "a.b", FALSE },
  { AT (placement, PpPlacement, piece), "", FALSE },
  { AT (wire, PpWire, from), "", FALSE },
  { AT (wire, PpWire, to), "", FALSE },
  { AT (wire, PpWire, to), "left", FALSE },
  { AT (quiet, PpQuiet, code), "", FALSE },
  { AT (background, PpBackground, glass.colour), "#EEf4f2", TRUE },
  { AT (background, PpBackground, glass.colour), "#eef4f", FALSE },
  { AT (background, PpBackground, glass.colour), "#eef4f22", FALSE },
  { AT (background, PpBackground, glass.colour), "eef4f22", FALSE },
  { AT (background, PpBackground, glass.colour), "#eeg4f2", FALSE },
  { AT (background, PpBackground, glass.colour), "", FALSE },
  { AT (background, PpBackground, glass.colour), NULL, FALSE },
  { AT (fused, PpFused, glass.colour), "amber", FALSE },
  { AT (piece, PpPiece, colour), "#12345", FALSE },
  { AT (wire, PpWire, knotted_at), NULL, TRUE },
  { AT (wire, PpWire, knotted_at), "yesterday", FALSE },
  { AT (placement, PpPlacement, glued_at), NULL, TRUE },
  { AT (placement, PpPlacement, glued_at), "", FALSE },
  { AT (log_entry, PpLogEntry, at), NULL, FALSE },
  { AT (log_entry, PpLogEntry, at), "", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00Z", TRUE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02t14:30:00z", TRUE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00.125-11:30", TRUE },
  { AT (log_entry, PpLogEntry, at), "2028-02-29T23:59:60+00:00", TRUE },
  { AT (log_entry, PpLogEntry, at), "2026-02-29T14:30:00Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-13-01T14:30:00Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T24:00:00Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:60:00Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:61Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00.Z", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00+24:00", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00+0200", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02T14:30:00Z ", FALSE },
  { AT (log_entry, PpLogEntry, at), "2026-05-02 14:30:00Z", FALSE },
};

static void
test_text (gconstpointer data)
{
  const Text *row = data;
  Draft draft;

  row->at.record->fill (&draft, TRUE);
  *(const char **) G_STRUCT_MEMBER_P (&draft, row->at.offset) = row->value;
  check_made (row->at.record, &draft, row->allowed ? NULL : row->at.member, PP_PANEL_ERROR_VALUE);
}

/* What takes more than one number or text to say. */
typedef struct
{
  const char   *name;
  const Record *record;
  void          (*change) (Draft *draft);
  const char   *member; /* NULL: allowed */
  int           code;
} Whole;

static void
no_change (Draft *draft)
{
}

static void
no_pocket (Draft *draft)
{
  draft->fused.has_pocket = FALSE;
  draft->fused.pocket = (PpPocket) { .insert_thickness = -1 };
}

static void
mixing_as_long (Draft *draft)
{
  draft->adhesive.mixing = draft->adhesive.working_life;
}

static void
mixing_negative (Draft *draft)
{
  draft->adhesive.mixing = -1;
}

static void
flat_crown (Draft *draft)
{
  draft->piece.crown.height = 0;
  draft->piece.crown.radius = NAN;
}

/* A measured form has no rise. */
static void
measured_rise (Draft *draft)
{
  draft->piece.form.rise = NAN;
}

static const Whole wholes[] = {
  { "good", &background, no_change, NULL },
  { "good", &fused, no_change, NULL },
  { "good", &hole, no_change, NULL },
  { "good", &wire, no_change, NULL },
  { "good", &display, no_change, NULL },
  { "good", &adhesive, no_change, NULL },
  { "good", &piece, no_change, NULL },
  { "good", &cupped, no_change, NULL },
  { "good", &measured, no_change, NULL },
  { "good", &placement, no_change, NULL },
  { "good", &log_entry, no_change, NULL },
  { "good", &quiet, no_change, NULL },
  { "good", &free_background, no_change, NULL },
  { "no-pocket", &fused, no_pocket, NULL },
  { "mixing-as-long", &adhesive, mixing_as_long, "working_life", PP_PANEL_ERROR_VALUE },
  { "mixing-negative", &adhesive, mixing_negative, "mixing", PP_PANEL_ERROR_VALUE },
  { "flat-crown", &cupped, flat_crown, NULL },
  { "without-rise", &measured, measured_rise, NULL },
};

static void
test_whole (gconstpointer data)
{
  const Whole *row = data;
  Draft draft;

  row->record->fill (&draft, TRUE);
  row->change (&draft);
  check_made (row->record, &draft, row->member, row->code);
}

/* A side of the background may be as long as a panel may be. */
typedef struct
{
  Member   at;
  double   value;
  gboolean allowed;
  int      code;
} Side;

static const Side sides[] = {
  { AT (background, PpBackground, width), 8, TRUE },
  { AT (background, PpBackground, width), 3000, TRUE },
  { AT (background, PpBackground, width), 3000.5, FALSE, PP_PANEL_ERROR_LIMIT },
  { AT (background, PpBackground, width), 0, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, width), -1, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, width), NAN, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, width), INFINITY, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, height), 8, TRUE },
  { AT (background, PpBackground, height), 3000, TRUE },
  { AT (background, PpBackground, height), 3000.5, FALSE, PP_PANEL_ERROR_LIMIT },
  { AT (background, PpBackground, height), 0, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, height), -1, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, height), NAN, FALSE, PP_PANEL_ERROR_VALUE },
  { AT (background, PpBackground, height), INFINITY, FALSE, PP_PANEL_ERROR_VALUE },
};

static void
test_side (gconstpointer data)
{
  const Side *row = data;
  Draft draft;

  fill_background (&draft, TRUE);
  *(double *) G_STRUCT_MEMBER_P (&draft, row->at.offset) = row->value;
  check_made (&background, &draft, row->allowed ? NULL : row->at.member, row->code);
}

/* Parts that must be given. */
static const Member parts[] = {
  AT (free_background, PpBackground, outline),
  AT (fused, PpFused, outline),
  AT (fused, PpFused, pocket.insert),
  AT (piece, PpPiece, outline),
  { &measured, G_STRUCT_OFFSET (PpPiece, form.grid), "form.heights" },
};

static void
test_part (gconstpointer data)
{
  const Member *part = data;
  Draft draft;

  part->record->fill (&draft, TRUE);
  check_made (part->record, &draft, NULL, 0);
  *(gconstpointer *) G_STRUCT_MEMBER_P (&draft, part->offset) = NULL;
  check_made (part->record, &draft, part->member, PP_PANEL_ERROR_VALUE);
}

static void
test_count (void)
{
  Draft draft;

  fill_piece (&draft, TRUE);
  draft.piece.count = 0;
  check_made (&piece, &draft, NULL, 0);
  draft.piece.count = 100000;
  check_made (&piece, &draft, NULL, 0);
  draft.piece.count = 100001;
  check_made (&piece, &draft, "count", PP_PANEL_ERROR_VALUE);
}

typedef struct
{
  const char *name;
  double      x0;
  double      y0;
  double      step;
  guint       n_rows;
  guint       n_columns;
  double      last;
  const char *member;
} Grid;

static const Grid grids[] = {
  { "good", -1, -2, 0.5, 2, 2, -4, NULL },
  { "one", 0, 0, 1, 1, 1, 0, NULL },
  { "no-rows", 0, 0, 1, 0, 2, 0, "form.heights" },
  { "no-columns", 0, 0, 1, 2, 0, 0, "form.heights" },
  { "nan-height", 0, 0, 1, 2, 2, NAN, "form.heights" },
  { "infinite-height", 0, 0, 1, 2, 2, INFINITY, "form.heights" },
  { "nan-x", NAN, 0, 1, 2, 2, 0, "form.x" },
  { "infinite-y", 0, INFINITY, 1, 2, 2, 0, "form.y" },
  { "no-step", 0, 0, 0, 2, 2, 0, "form.step" },
  { "negative-step", 0, 0, -1, 2, 2, 0, "form.step" },
  { "nan-step", 0, 0, NAN, 2, 2, 0, "form.step" },
};

static void
test_grid (gconstpointer data)
{
  const Grid *row = data;
  double heights[4] = { 1, 2, 3, 0 };
  g_autoptr (PpHeightGrid) heights_grid = NULL;
  Draft draft;

  heights[MAX (row->n_rows * row->n_columns, 1) - 1] = row->last;
  heights_grid = pp_height_grid_new (row->x0, row->y0, row->step, row->n_rows, row->n_columns,
                                     heights);
  fill_measured (&draft, TRUE);
  draft.piece.form.grid = heights_grid;
  check_made (&measured, &draft, row->member, PP_PANEL_ERROR_VALUE);
}

static void
test_art (void)
{
  g_autoptr (GBytes) most = g_bytes_new_take (g_malloc0 (8388608), 8388608);
  g_autoptr (GBytes) more = g_bytes_new_take (g_malloc0 (8388609), 8388609);
  Draft draft;

  fill_piece (&draft, TRUE);
  draft.piece.art = most;
  check_made (&piece, &draft, NULL, 0);
  draft.piece.art = more;
  check_made (&piece, &draft, "art", PP_PANEL_ERROR_LIMIT);
}

/* An outline that was computed from what is no number is refused. */
static void
test_nowhere (void)
{
  static const PpPoint points[] = { { NAN, NAN }, { NAN, NAN }, { NAN, NAN } };
  static const PpPoint far[] = { { 0, 0 }, { INFINITY, 0 }, { 0, 9 } };
  g_autoptr (PpOutline) nowhere = pp_outline_new_ring (points, G_N_ELEMENTS (points));
  g_autoptr (PpOutline) endless = pp_outline_new_ring (far, G_N_ELEMENTS (far));
  Draft draft;

  fill_piece (&draft, TRUE);
  draft.piece.outline = nowhere;
  check_made (&piece, &draft, "outline", PP_PANEL_ERROR_VALUE);
  draft.piece.outline = endless;
  check_made (&piece, &draft, "outline", PP_PANEL_ERROR_VALUE);
}

/* A free background is as large as its outline, another has none. */
static void
test_free (void)
{
  Draft draft;
  g_autoptr (PpBackground) made = NULL;
  g_autoptr (PpBackground) rectangle = NULL;

  fill_free (&draft, TRUE);
  draft.background.corner_radius = 4;
  made = pp_background_new (&draft.background, NULL);
  g_assert_cmpfloat (made->width, ==, 20);
  g_assert_cmpfloat (made->height, ==, 20);
  g_assert_cmpfloat (made->corner_radius, ==, 0);
  g_assert_true (made->outline == square);
  fill_background (&draft, TRUE);
  draft.background.outline = square;
  rectangle = pp_background_new (&draft.background, NULL);
  g_assert_null (rectangle->outline);
}

typedef struct
{
  Member at;
  double value; /* NAN: null */
} Number;

static const Number numbers[] = {
  { AT (background, PpBackground, corner_radius), 0 },
  { AT (background, PpBackground, glass.density), 2500 },
  { AT (background, PpBackground, glass.refractive_index), 1.52 },
  { AT (background, PpBackground, glass.transmittance), 0.9 },
  { AT (background, PpBackground, glass.expansion), 9.0e-6 },
  { AT (fused, PpFused, glass.density), NAN },
  { AT (fused, PpFused, glass.refractive_index), 1.52 },
  { AT (fused, PpFused, glass.transmittance), 0.9 },
  { AT (fused, PpFused, glass.expansion), NAN },
  { AT (fused, PpFused, pocket.gap), NAN },
  { AT (hole, PpHole, diameter), 6 },
  { AT (wire, PpWire, length), NAN },
  { AT (wire, PpWire, diameter), 1.2 },
  { AT (wire, PpWire, tail), 40 },
  { AT (wire, PpWire, knot_diameter), 8 },
  { AT (wire, PpWire, knot_height), 3 },
  { AT (wire, PpWire, safe_load), NAN },
  { AT (wire, PpWire, breaking_load), NAN },
  { AT (wire, PpWire, friction), 0.2 },
  { AT (wire, PpWire, mass_per_metre), 4 },
  { AT (display, PpDisplay, sideways), 30 },
  { AT (display, PpDisplay, updown), 15 },
  { AT (display, PpDisplay, hook_rating), NAN },
  { AT (adhesive, PpAdhesive, working_life), 5 },
  { AT (adhesive, PpAdhesive, mixing), 1 },
  { AT (adhesive, PpAdhesive, grab), 10 },
  { AT (adhesive, PpAdhesive, hard), 60 },
  { AT (adhesive, PpAdhesive, cure), 1440 },
  { AT (adhesive, PpAdhesive, sitting), NAN },
  { AT (adhesive, PpAdhesive, ratio), 1 },
  { { &adhesive, G_STRUCT_OFFSET (PpAdhesive, ratio) + sizeof (double), "ratio-b" }, 1 },
  { AT (adhesive, PpAdhesive, density), 1.15 },
  { AT (adhesive, PpAdhesive, largest_mix), 6 },
  { AT (adhesive, PpAdhesive, smallest_mix), 2 },
  { AT (adhesive, PpAdhesive, fill_gap), 1.5 },
  { AT (adhesive, PpAdhesive, working_stress), 0.5 },
  { AT (piece, PpPiece, mass), NAN },
  { AT (piece, PpPiece, density), 2500 },
  { AT (piece, PpPiece, transmittance), 0 },
  { AT (piece, PpPiece, form.foot), 10 },
  { AT (piece, PpPiece, form.flat), NAN },
  { AT (piece, PpPiece, crown.height), 0 },
  { AT (placement, PpPlacement, rotation), 0 },
};

static void
test_default_number (gconstpointer data)
{
  const Number *row = data;
  Draft draft;
  double value;

  row->at.record->fill (&draft, FALSE);
  value = *(double *) G_STRUCT_MEMBER_P (&draft, row->at.offset);
  g_assert_true (isnan (row->value) ? isnan (value) : value == row->value);
}

static const Text default_texts[] = {
  { AT (background, PpBackground, glass.colour), "#eef4f2" },
  { AT (background, PpBackground, extra), NULL },
  { AT (fused, PpFused, name), "" },
  { AT (fused, PpFused, glass.colour), "#c98a2b" },
  { AT (wire, PpWire, knotted_at), NULL },
  { AT (adhesive, PpAdhesive, name), "" },
  { AT (piece, PpPiece, name), "" },
  { AT (piece, PpPiece, colour), "#f2efe2" },
  { AT (piece, PpPiece, box), NULL },
  { AT (placement, PpPlacement, group), NULL },
  { AT (placement, PpPlacement, pocket), NULL },
  { AT (placement, PpPlacement, glued_at), NULL },
};

static void
test_default_text (gconstpointer data)
{
  const Text *row = data;
  Draft draft;

  row->at.record->fill (&draft, FALSE);
  g_assert_cmpstr (*(const char **) G_STRUCT_MEMBER_P (&draft, row->at.offset), ==, row->value);
}

static void
test_other_defaults (void)
{
  PpPiece tray = pp_piece_draft ();
  PpPlacement placed = pp_placement_draft ();

  g_assert_cmpint (pp_background_draft ().shape, ==, PP_SHAPE_RECTANGLE);
  g_assert_cmpint (pp_fused_draft ().role, ==, PP_ROLE_NONE);
  g_assert_false (pp_fused_draft ().has_pocket);
  g_assert_false (pp_hole_draft ().drilled);
  g_assert_cmpint (pp_display_draft ().place, ==, PP_PLACE_WALL);
  g_assert_cmpuint (tray.count, ==, 1);
  g_assert_false (pp_form_is_shaped (&tray.form));
  g_assert_null (tray.art);
  g_assert_false (placed.mirrored);
  g_assert_false (placed.pinned);
  g_assert_null (pp_log_entry_draft ().about[0]);
  g_assert_null (pp_quiet_draft ().about[0]);
}

/* Under the sanitizers: neither lost nor freed twice. */
static void
test_ref (gconstpointer data)
{
  const Record *record = data;
  Draft draft;
  gpointer made;

  record->fill (&draft, TRUE);
  made = record->make (&draft, NULL);
  g_assert_true (record->ref (made) == made);
  record->unref (made);
  record->unref (made);
  record->unref (NULL);
}

static void
test_copies (void)
{
  char id[] = "p1", group[] = "left", extra[] = "\"a\": 1";
  PpPlacement draft = pp_placement_draft ();
  g_autoptr (PpPlacement) made = NULL;

  draft.id = id;
  draft.piece = "oxeye";
  draft.group = group;
  draft.extra = extra;
  made = pp_placement_new (&draft, NULL);
  memset (id, 'x', 2);
  memset (group, 'x', 4);
  memset (extra, 'x', 6);
  g_assert_cmpstr (made->id, ==, "p1");
  g_assert_cmpstr (made->group, ==, "left");
  g_assert_cmpstr (made->extra, ==, "\"a\": 1");
}

static void
test_shares (void)
{
  Draft draft;
  g_autoptr (PpPiece) made = NULL;
  g_autoptr (GBytes) art = g_bytes_new_static ("<svg/>", 6);

  fill_measured (&draft, TRUE);
  draft.piece.art = art;
  made = pp_piece_new (&draft.piece, NULL);
  g_assert_true (made->outline == square);
  g_assert_true (made->form.grid == grid);
  g_assert_true (made->art == art);
}

/* The words of the file for the values of one enum, in its order. */
typedef struct
{
  const char *name;
  const char *(*get) (int value);
  gboolean    (*from) (const char *name, int *value);
  const char *words[8];
} Names;

#define NAMES(name, prefix)                                     \
  name, (const char *(*) (int)) prefix##_get_name,              \
  (gboolean (*) (const char *, int *)) prefix##_from_name

static const Names names[] = {
  { NAMES ("shape", pp_background_shape), { "rectangle", "ellipse", "arch", "free" } },
  { NAMES ("role", pp_role), { "", "vase", "shape" } },
  { NAMES ("place", pp_place), { "wall", "window" } },
  { NAMES ("kind", pp_kind), { "flower", "bud", "leaf", "stem", "filler" } },
  { NAMES ("form", pp_form_kind),
    { "flat", "cupped", "domed", "arched", "curled", "lifted", "measured" } },
  { NAMES ("what", pp_log_what),
    { "mixed", "placed", "taken-back", "fell", "broke", "moved", "paused" } },
};

static void
test_names (gconstpointer data)
{
  const Names *row = data;
  int value = 77;

  for (int i = 0; row->words[i] != NULL; i++)
    {
      g_assert_cmpstr (row->get (i), ==, row->words[i]);
      g_assert_true (row->from (row->words[i], &value));
      g_assert_cmpint (value, ==, i);
    }
  value = 77;
  g_assert_false (row->from ("towpath", &value));
  g_assert_false (row->from ("Wall", &value));
  g_assert_cmpint (value, ==, 77);
}

typedef const char *(*PathOf) (gconstpointer row);

static void
add_rows (const char   *what,
          gconstpointer rows,
          gsize         size,
          guint         n,
          PathOf        path_of,
          GTestDataFunc test)
{
  for (guint i = 0; i < n; i++)
    {
      const char *row = (const char *) rows + i * size;
      g_autofree char *path = g_strdup_printf ("/record/%s/%u-%s", what, i, path_of (row));

      g_test_add_data_func (path, row, test);
    }
}

#define ADD(what, rows, path_of, test) \
  add_rows (what, rows, sizeof *rows, G_N_ELEMENTS (rows), path_of, test)

static const char *
member_path (gconstpointer row)
{
  return ((const Member *) row)->member;
}

/* Whole, Grid and Names begin with their name. */
static const char *
name_path (gconstpointer row)
{
  return *(const char * const *) row;
}

static void
add_all (void)
{
  ADD ("range", ranges, member_path, test_range);
  ADD ("text", texts, member_path, test_text);
  ADD ("whole", wholes, name_path, test_whole);
  ADD ("side", sides, member_path, test_side);
  ADD ("part", parts, member_path, test_part);
  ADD ("grid", grids, name_path, test_grid);
  ADD ("default", numbers, member_path, test_default_number);
  ADD ("default-text", default_texts, member_path, test_default_text);
  ADD ("names", names, name_path, test_names);
  for (guint i = 0; i < G_N_ELEMENTS (records); i++)
    {
      g_autofree char *path = g_strdup_printf ("/record/ref/%s", records[i]->name);

      g_test_add_data_func (path, records[i], test_ref);
    }
  g_test_add_func ("/record/count", test_count);
  g_test_add_func ("/record/art", test_art);
  g_test_add_func ("/record/nowhere", test_nowhere);
  g_test_add_func ("/record/free", test_free);
  g_test_add_func ("/record/other-defaults", test_other_defaults);
  g_test_add_func ("/record/copies", test_copies);
  g_test_add_func ("/record/shares", test_shares);
}

int
main (int   argc,
      char *argv[])
{
  static const double heights[] = { 0, 1, 2, 3 };
  int status;

  g_test_init (&argc, &argv, NULL);
  square = small_square ();
  grid = pp_height_grid_new (-1, -1, 2, 2, 2, heights);
  add_all ();
  status = g_test_run ();
  pp_outline_unref (square);
  pp_height_grid_unref (grid);
  return status;
}
