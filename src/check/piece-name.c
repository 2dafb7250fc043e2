/* piece-name.c: what a placed piece is called in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/piece-name.h"

#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tally.h"

static gboolean
is_alone (const PpScene *scene,
          guint          index,
          const char    *name)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    if (i != index && g_strcmp0 (pp_piece_get_title (scene->bodies[i]->piece), name) == 0)
      return FALSE;
  return TRUE;
}

/* By its own point, as its card tells it. */
static char *
name_with_place (const PpScene *scene,
                 guint          index)
{
  const char *name = pp_piece_get_title (scene->bodies[index]->piece);
  const PpPlacement *placement = scene->bodies[index]->placement;
  g_autofree char *place = pp_place_format (scene->panel, (PpPoint) { placement->x, placement->y });

  /* Translators: a piece and where it lies: "Oxeye (12 mm from the left and 45 mm from the top)" */
  return g_strdup_printf (_("%s (%s)"), name, place);
}

char *
pp_piece_name_of (const PpScene *scene,
                  guint          index)
{
  const char *name = pp_piece_get_title (scene->bodies[index]->piece);

  return is_alone (scene, index, name) ? g_strdup (name) : name_with_place (scene, index);
}

/* A name with its place goes by the body, by the corner that places are told from, and by the
 * unit. */
struct _PpPieceNames
{
  const PpScene *scene;
  GHashTable    *counts; /* placements by plain name */
  GHashTable    *copies; /* by the id of the piece */
  char         **names;  /* counted, with their places; NULL: not asked for, or alone with it */
};

/* Whether the same pieces lie there, one by one; most edits only move them. */
static gboolean
has_same_pieces (const PpScene *a,
                 const PpScene *b)
{
  if (a->n_bodies != b->n_bodies)
    return FALSE;
  for (guint i = 0; i < a->n_bodies; i++)
    if (a->bodies[i] != b->bodies[i] && a->bodies[i]->piece != b->bodies[i]->piece)
      return FALSE;
  return TRUE;
}

static void
count_names (PpPieceNames       *self,
             const PpPieceNames *previous)
{
  if (previous != NULL && has_same_pieces (self->scene, previous->scene))
    {
      self->counts = g_hash_table_ref (previous->counts);
      self->copies = g_hash_table_ref (previous->copies);
      return;
    }
  self->counts = pp_tally_new ();
  self->copies = pp_tally_new ();
  for (guint i = 0; i < self->scene->n_bodies; i++)
    {
      const PpPiece *piece = self->scene->bodies[i]->piece;

      pp_tally_add (self->counts, pp_piece_get_title (piece));
      pp_tally_add (self->copies, piece->id);
    }
}

PpPieceNames *
pp_piece_names_new (const PpScene      *scene,
                    const PpPieceNames *previous)
{
  PpPieceNames *self = g_new0 (PpPieceNames, 1);

  self->scene = scene;
  self->names = g_new0 (char *, scene->n_bodies);
  count_names (self, previous);
  if (previous == NULL || previous->scene->panel->units != scene->panel->units
      || previous->scene->panel->background != scene->panel->background)
    return self;
  for (guint i = 0; i < MIN (scene->n_bodies, previous->scene->n_bodies); i++)
    if (previous->names[i] != NULL && previous->scene->bodies[i] == scene->bodies[i])
      self->names[i] = g_ref_string_acquire (previous->names[i]);
  return self;
}

void
pp_piece_names_free (PpPieceNames *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->scene->n_bodies; i++)
    g_clear_pointer (&self->names[i], g_ref_string_release);
  g_free (self->names);
  g_hash_table_unref (self->counts);
  g_hash_table_unref (self->copies);
  g_free (self);
}

static gboolean
has_plain_name (const PpPieceNames *self,
                guint               index)
{
  return pp_tally_get (self->counts, pp_piece_get_title (self->scene->bodies[index]->piece)) == 1;
}

gboolean
pp_piece_names_have_same_pieces (const PpPieceNames *a,
                                 const PpPieceNames *b)
{
  return a->copies == b->copies;
}

gboolean
pp_piece_names_agree (const PpPieceNames *a,
                      const PpPieceNames *b,
                      guint               index)
{
  return a->counts == b->counts || has_plain_name (a, index) == has_plain_name (b, index);
}

guint
pp_piece_names_get_copies (const PpPieceNames *self,
                           const PpPiece      *piece)
{
  return pp_tally_get (self->copies, piece->id);
}

static const char *
get_name (PpPieceNames *self,
          guint         index)
{
  if (has_plain_name (self, index))
    return pp_piece_get_title (self->scene->bodies[index]->piece);
  if (self->names[index] == NULL)
    {
      g_autofree char *text = name_with_place (self->scene, index);

      self->names[index] = g_ref_string_new (text);
    }
  return self->names[index];
}

char *
pp_findings_name (const PpFindings *findings,
                  const PpScene    *scene,
                  guint             index)
{
  return findings->names != NULL ? g_strdup (get_name (findings->names, index))
                                 : pp_piece_name_of (scene, index);
}
