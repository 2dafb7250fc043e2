/* make-sheets.c: writes the sheets of a made-up panel, for test-sheets.py to read back.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Usage: make-sheets PANEL PAPER UNITS[,mono][,behind] FORMATS KINDS DIR
 * PANEL: one of those below, or none for empty sheets.
 * FORMATS: of pdf, svg, png; print for what a printer would be sent, as printed.pdf; again to hold
 * a second writing against the first.
 * KINDS: as on the command line; all for those of a panel.
 * Writes the files into DIR and prints the plan, a line a step: number, mix, name, parted by tabs.
 */
#include "config.h"

#include "panel/i18n.h"
#include "sheet/sheet.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define MAX_CORNERS 128
#define PLAN_STEPS 2000 /* no test here asks for the best plan */

typedef struct
{
  const char *name;
  const char *title;
  double      width;
  double      height;
  guint       n_pieces;
  gboolean    has_wire;
  double      sitting; /* min; NAN: none */
  guint       n_holes; /* beside those of the wire, each at a distance of its own both ways */
  const char *note;
  gboolean    is_oval;
} Plot;

static const Plot plots[] = {
  { "meadow", "Estuary meadow", 300, 420, 16, TRUE, NAN },
  { "wide", "Towpath in June", 500, 260, 12, TRUE, 15, 0,
    "For the north window.\nNot\001 <too> high." },
  { "crowded", "Walled garden", 400, 560, 120, TRUE, NAN },
  { "empty", "Nothing yet", 300, 400, 0, FALSE, NAN },
  { "wire-only", "Wire alone", 300, 400, 0, TRUE, NAN },
  { "no-wire", "Three on a sill", 200, 150, 3, FALSE, NAN },
  { "huge", "The long hedge", 2800, 1900, 20, TRUE, NAN },
  { "tiny", "A thimble of campion", 30, 40, 2, FALSE, NAN },
  { "drilled", "Towpath rail", 300, 420, 3, TRUE, NAN, 8 },
  { "oval", "The round pond", 400, 300, 4, TRUE, NAN, .is_oval = TRUE },
  { "untitled", "", 300, 420, 5, TRUE, NAN },
  { "long-title",
    "The far bank of the estuary on the last warm evening of September, with sedge, campion, "
    "oxeye, flag iris and a jug of cornflowers that somebody left behind on the towpath "
    "wall <& again>",
    300, 420, 6, TRUE, NAN },
  { "arabic",
    "\330\262\331\207\330\261\330\251 \330\247\331\204\330\254\330\257\330\247\330\261 "
    "\330\247\331\204\331\202\330\257\331\212\331\205", 300, 420, 6, TRUE, NAN },
};

static const char *const names[] = { "Oxeye", "Dock leaf", "Cornflower", "Fern", "Campion", "Sedge",
                                     "Mallow", "Flag iris" };
static const char *const colours[] = { "#f2efe2", "#5f9a34", "#4466c8", "#3f7a3a", "#d86a9a",
                                       "#8a9a45", "#b779c0", "#6a55b5" };

/* The least of generators: the same numbers on every machine. */
static double
next_share (guint32 *state)
{
  *state = *state * 1664525u + 1013904223u;
  return (*state >> 8) / (double) (1 << 24);
}

static PpOutline *
make_flower (double radius,
             guint  petals)
{
  PpPoint points[MAX_CORNERS];
  guint n = petals * 8;

  for (guint i = 0; i < n; i++)
    {
      double angle = i * 2 * G_PI / n;
      double reach = radius * (0.82 + 0.18 * cos (petals * angle));

      points[i] = (PpPoint) { reach * sin (angle), -reach * cos (angle) };
    }
  return pp_outline_new_ring (points, n);
}

static PpOutline *
make_leaf (double length,
           double width)
{
  PpPoint points[32];

  for (guint i = 0; i < 32; i++)
    {
      double along = i < 16 ? i / 16.0 : (32 - i) / 16.0;
      double across = width / 2 * pow (sin (along * G_PI), 0.8);

      points[i] = (PpPoint) { i < 16 ? across : -across, (along - 0.5) * length };
    }
  return pp_outline_new_ring (points, 32);
}

static PpPiece *
make_piece (guint  kind,
            double size)
{
  gboolean is_leaf = kind % 2 == 1;
  g_autofree char *id = g_strdup_printf ("piece-%u", kind);
  g_autoptr (PpOutline) outline = is_leaf ? make_leaf (size * 2.4, size * 0.7)
                                          : make_flower (size * 0.6, 5 + kind);
  PpPiece draft = pp_piece_draft ();

  draft.id = id;
  draft.name = names[kind];
  draft.kind = is_leaf ? PP_KIND_LEAF : PP_KIND_FLOWER;
  draft.count = 500;
  draft.thickness = is_leaf ? 3 : 4;
  draft.colour = colours[kind];
  draft.outline = outline;
  if (!is_leaf)
    draft.form = (PpForm) { .kind = PP_FORM_CUPPED, .rise = size * 0.12, .foot = size * 0.3 };
  return pp_piece_new (&draft, NULL);
}

static void
add_pieces (PpPanel    *draft,
            const Plot *plot)
{
  double size = plot->n_pieces == 0 ? 1 : sqrt (plot->width * plot->height / plot->n_pieces) * 0.62;
  guint32 state = 7;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_ptr_array_add (draft->tray, make_piece (i, fmin (size, 70)));
  for (guint i = 0; i < plot->n_pieces; i++)
    {
      g_autofree char *id = g_strdup_printf ("p%u", i);
      g_autofree char *piece = g_strdup_printf ("piece-%u", (i * 5) % 8);
      PpPlacement place = pp_placement_draft ();

      place.id = id;
      place.piece = piece;
      place.x = plot->width * (0.12 + 0.76 * next_share (&state));
      place.y = plot->height * (0.16 + 0.7 * next_share (&state));
      place.rotation = floor (360 * next_share (&state));
      place.mirrored = i % 5 == 4;
      g_ptr_array_add (draft->placements, pp_placement_new (&place, NULL));
    }
}

static void
add_wire (PpPanel    *draft,
          const Plot *plot)
{
  PpWire wire = pp_wire_draft ();
  PpHole left = pp_hole_draft ();
  PpHole right = pp_hole_draft ();

  left.id = "left";
  right.id = "right";
  left.y = right.y = plot->height * 0.12;
  left.x = plot->width * 0.3;
  right.x = plot->width * 0.7;
  left.diameter = right.diameter = 6;
  wire.from = "left";
  wire.to = "right";
  wire.length = plot->width * 0.5;
  g_ptr_array_add (draft->holes, pp_hole_new (&left, NULL));
  g_ptr_array_add (draft->holes, pp_hole_new (&right, NULL));
  draft->wire = pp_wire_new (&wire, NULL);
}

static void
add_holes (PpPanel    *draft,
           const Plot *plot)
{
  for (guint i = 0; i < plot->n_holes; i++)
    {
      g_autofree char *id = g_strdup_printf ("hole-%u", i);
      PpHole hole = pp_hole_draft ();

      hole.id = id;
      hole.x = plot->width * (i + 1) / (plot->n_holes + 2);
      hole.y = plot->height * (0.2 + 0.7 * (i * 3 % plot->n_holes) / plot->n_holes);
      hole.diameter = 6;
      g_ptr_array_add (draft->holes, pp_hole_new (&hole, NULL));
    }
}

/* The panel holds what it needs of them. */
static void
release_draft (PpPanel *draft)
{
  pp_background_unref (draft->background);
  pp_adhesive_unref (draft->adhesive);
  if (draft->wire != NULL)
    pp_wire_unref (draft->wire);
  g_ptr_array_unref (draft->holes);
  g_ptr_array_unref (draft->tray);
  g_ptr_array_unref (draft->placements);
}

static PpPanel *
make_panel (const Plot *plot)
{
  PpBackground glass = pp_background_draft ();
  PpAdhesive glue = pp_adhesive_draft ();
  PpPanel draft = pp_panel_draft ();
  g_autoptr (GError) error = NULL;
  PpPanel *panel;

  glass.width = plot->width;
  glass.height = plot->height;
  glass.thickness = 6;
  if (plot->is_oval)
    glass.shape = PP_SHAPE_ELLIPSE;
  else
    glass.corner_radius = fmin (4, plot->width / 4);
  glue.sitting = plot->sitting;
  draft.title = plot->title;
  draft.maker = "H. Sedgewick";
  draft.created = "2026-05-02";
  draft.note = plot->note != NULL ? plot->note : "";
  draft.background = pp_background_new (&glass, NULL);
  draft.adhesive = pp_adhesive_new (&glue, NULL);
  draft.holes = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_hole_unref);
  draft.tray = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  draft.placements = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  if (plot->has_wire)
    add_wire (&draft, plot);
  add_holes (&draft, plot);
  add_pieces (&draft, plot);
  panel = pp_panel_new (&draft, &error);
  if (panel == NULL)
    g_error ("%s: %s", plot->name, error->message);
  release_draft (&draft);
  return panel;
}

static void
print_plan (const PpPlan *plan)
{
  for (guint i = 0; i < plan->n_steps; i++)
    {
      const PpScene *scene = plan->check->scene;
      guint job = plan->steps[i].job;

      g_print ("%u\t%u\t%s\n", i + 1, plan->steps[i].mix,
               job < scene->n_knots ? "knot" : scene->bodies[job - scene->n_knots]->piece->name);
    }
}

static void
write_files (const GPtrArray *files,
             const char      *directory)
{
  for (guint i = 0; i < files->len; i++)
    {
      const PpSheetFile *file = g_ptr_array_index (files, i);
      g_autofree char *path = g_build_filename (directory, file->name, NULL);
      g_autoptr (GError) error = NULL;
      gsize length;
      const char *data = g_bytes_get_data (file->bytes, &length);

      if (!g_file_set_contents (path, data, (gssize) length, &error))
        g_error ("%s", error->message);
    }
}

/* Once more, in the same process: no counter of some library may show. */
static void
write_again (const PpSheetJob   *job,
             const char * const *kinds,
             PpSheetFormats      formats,
             const GPtrArray    *files)
{
  g_autoptr (GPtrArray) again = pp_sheets_write (job, kinds, formats, NULL);

  g_assert_cmpuint (again->len, ==, files->len);
  for (guint i = 0; i < files->len; i++)
    {
      const PpSheetFile *a = g_ptr_array_index (files, i);
      const PpSheetFile *b = g_ptr_array_index (again, i);

      g_assert_cmpstr (a->name, ==, b->name);
      g_assert_true (g_bytes_equal (a->bytes, b->bytes));
    }
}

/* Printed by way of the recorded pages, one to a page of a PDF: printed.pdf. */
static void
print_pages (const PpSheetJob   *job,
             const char * const *kinds,
             const char         *directory)
{
  g_autofree char *path = g_build_filename (directory, "printed.pdf", NULL);
  g_autoptr (GPtrArray) pages = pp_sheets_record (job, kinds, NULL);
  cairo_surface_t *paper = cairo_pdf_surface_create (path, job->paper.width / PP_MM_PER_POINT,
                                                     job->paper.height / PP_MM_PER_POINT);
  cairo_t *cr = cairo_create (paper);

  cairo_scale (cr, 1 / PP_MM_PER_POINT, 1 / PP_MM_PER_POINT);
  for (guint i = 0; i < pages->len; i++)
    {
      pp_sheets_draw_page (g_ptr_array_index (pages, i), cr);
      cairo_show_page (cr);
    }
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (paper);
}

/* The ids, ended by NULL. (transfer full) */
static char **
read_kinds (const char *text)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  guint n;
  const PpSheetKind * const *kinds = pp_sheet_kinds (&n);

  if (!g_str_equal (text, "all"))
    return g_strsplit (text, ",", -1);
  for (guint i = 0; i < n; i++)
    g_strv_builder_add (builder, kinds[i]->id);
  return g_strv_builder_end (builder);
}

static const Plot *
find_plot (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (plots); i++)
    if (g_str_equal (plots[i].name, name))
      return &plots[i];
  g_error ("no panel %s", name);
}

static PpSheetFormats
read_formats (const char *text)
{
  return (strstr (text, "pdf") != NULL ? PP_SHEET_PDF : 0)
         | (strstr (text, "svg") != NULL ? PP_SHEET_SVG : 0)
         | (strstr (text, "png") != NULL ? PP_SHEET_PNG : 0);
}

int
main (int    argc,
      char **argv)
{
  g_auto (GStrv) kinds = NULL;
  g_autoptr (PpPanel) panel = NULL;
  g_autoptr (PpCheck) check = NULL;
  g_autoptr (PpPlan) plan = NULL;
  g_autoptr (PpGallery) gallery = NULL;
  g_autoptr (GPtrArray) files = NULL;
  g_autoptr (GError) error = NULL;
  PpSheetJob job = { 0 };

  pp_i18n_bind ();
  if (argc != 7)
    g_error ("usage: make-sheets PANEL PAPER UNITS[,mono][,behind] FORMATS KINDS DIR");
  if (!g_str_equal (argv[1], "none"))
    {
      panel = make_panel (find_plot (argv[1]));
      job.check = check = pp_check_new (panel, NULL, NULL, NULL, NULL, NULL);
      job.plan = plan = pp_plan_new (check, PLAN_STEPS, NULL, NULL, NULL, NULL);
      job.gallery = gallery = pp_gallery_new (panel, NULL);
    }
  kinds = read_kinds (argv[5]);
  job.units = g_str_has_prefix (argv[3], "in") ? PP_UNITS_INCH : PP_UNITS_MM;
  job.mono = strstr (argv[3], "mono") != NULL;
  job.behind = strstr (argv[3], "behind") != NULL;
  if (!pp_paper_parse (argv[2], &job.paper))
    g_error ("no paper %s", argv[2]);
  files = pp_sheets_write (&job, (const char * const *) kinds, read_formats (argv[4]), &error);
  if (files == NULL)
    g_error ("%s", error->message);
  if (strstr (argv[4], "again") != NULL)
    write_again (&job, (const char * const *) kinds, read_formats (argv[4]), files);
  write_files (files, argv[6]);
  if (strstr (argv[4], "print") != NULL)
    print_pages (&job, (const char * const *) kinds, argv[6]);
  if (plan != NULL)
    print_plan (plan);
  return 0;
}
