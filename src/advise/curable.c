/* curable.c: which findings moving things about could put right, and by what.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "advise/curable-private.h"

typedef struct
{
  const char *code;
  PpMend      mend;
  PpProbes    probes; /* that see it */
} Row;

static const Row rows[] = {
  { "wire-shows", PP_MEND_WIRE, 1 << PP_PROBE_WIRE },
  { "hidden-barely", PP_MEND_WIRE, 1 << PP_PROBE_BARELY },
  { "shows-aslant", PP_MEND_WIRE, 1 << PP_PROBE_ASLANT },
  { "knot-shows", PP_MEND_DISC, 1 << PP_PROBE_DISC },
  { "knot-barely", PP_MEND_DISC, 1 << PP_PROBE_DISC_BARELY },
  { "hole-shows", PP_MEND_DISC, 1 << PP_PROBE_DISC },
  { "tips", PP_MEND_PIECE },         { "floats", PP_MEND_PIECE },
  { "unsteady", PP_MEND_PIECE },     { "slope", PP_MEND_PIECE },
  { "overhang", PP_MEND_PIECE },     { "no-joint", PP_MEND_PIECE },
  { "strain", PP_MEND_PIECE },       { "joint-small", PP_MEND_PIECE },
  { "squeeze", PP_MEND_PIECE },      { "flat-on-shaped", PP_MEND_PIECE },
  { "stem-astray", PP_MEND_PIECE },  { "stem-short", PP_MEND_PIECE },
  { "hole-edge", PP_MEND_HOLE },     { "hole-border", PP_MEND_HOLE },
  { "hole-pocket", PP_MEND_HOLE },   { "hole-corner", PP_MEND_HOLE },
  { "hole-hole", PP_MEND_HOLE },     { "turns-over", PP_MEND_HANG },
  { "wire-short", PP_MEND_HANG },    { "wire-taut", PP_MEND_HANG },
  { "not-level", PP_MEND_HANG },     { "slips", PP_MEND_HANG },
  { "wire-load", PP_MEND_HANG },     { "leans", PP_MEND_HANG },
  { "even-group", PP_MEND_GROUP },   { "stock", PP_MEND_STOCK },
  { "stems-wide", PP_MEND_STEMS },
};

static const Row *
find_row (const char *code)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].code, code))
      return &rows[i];
  return NULL;
}

PpMend
pp_mend_of (const char *code)
{
  const Row *row = find_row (code);

  return row != NULL ? row->mend : PP_MEND_NOTHING;
}

PpProbes
pp_probes_of (const char *code)
{
  const Row *row = find_row (code);

  return row != NULL ? row->probes : 0;
}

gboolean
pp_advise_can_cure (const char *code)
{
  g_return_val_if_fail (code != NULL, FALSE);

  return pp_mend_of (code) != PP_MEND_NOTHING;
}
