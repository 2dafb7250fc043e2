/* glance.c: a quick look at what would be hidden, before anything is asked in earnest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Darkness adds up where light multiplies: a piece is as dark as the logarithm of what shines
 * through it, in units of the limit. In whole numbers, so that taking one out and putting it back
 * leaves what was there.
 */
#include "advise/glance-private.h"
#include "advise/weight.h"

#include "shape/polygon.h"

gint32
pp_dark_of (double transmittance,
            double opaque)
{
  if (transmittance <= opaque)
    return PP_DARK;
  if (opaque <= 0 || transmittance >= 1)
    return 0;
  return (gint32) floor (PP_DARK * log (transmittance) / log (opaque));
}

static void
piece_init (PpGlancePiece *self,
            const PpPiece *piece,
            double         opaque)
{
  *self = (PpGlancePiece) { .cover = pp_cover_make (piece->outline, piece->transmittance) };
  self->bands = pp_bands_new (piece->outline, PP_TIE);
  self->cover.bands = self->bands;
  self->centroid = pp_outline_centroid (piece->outline);
  self->dark = pp_dark_of (piece->transmittance, opaque);
  pp_heights_init (&self->heights, piece);
  self->middle = pp_heights_underside (&self->heights, self->centroid) + piece->thickness / 2;
}

static PpFrame
frame_of (PpPose pose)
{
  PpPlacement placement = { .x = pose.x, .y = pose.y, .rotation = pose.rotation,
                            .mirrored = pose.mirrored };

  return pp_frame_of (&placement);
}

/* A piece where it lies: what the looks at one body share. */
typedef struct
{
  const PpGlancePiece *piece;
  PpFrame              frame;
  PpPoint              middle; /* its centroid in the panel frame */
  double               base;
  double               a;
  double               b;
} Lying;

static Lying
lie (const PpGlance     *self,
     const PpGlanceBody *body,
     PpPose              pose)
{
  Lying lying = { .piece = &self->pieces[body->piece], .frame = frame_of (pose),
                  .base = body->base, .a = body->a, .b = body->b };

  lying.middle = pp_frame_to_panel (&lying.frame, lying.piece->centroid);
  return lying;
}

#define LOOKS 3 /* at the height where a slanting line meets the piece */

static gboolean
covers_point (const Lying *self,
              PpPoint      p,
              PpPoint      slant)
{
  double z = self->base + self->piece->middle;
  gboolean straight = slant.x == 0 && slant.y == 0;
  PpPoint q = { p.x + z * slant.x, p.y + z * slant.y };
  PpPoint own = pp_frame_to_piece (&self->frame, q);

  for (guint k = 0; !straight && k < LOOKS; k++)
    {
      if (hypot (own.x, own.y) > 2 * self->piece->heights.reach)
        return FALSE;
      z = self->base + self->a * (q.x - self->middle.x) + self->b * (q.y - self->middle.y)
          + pp_heights_underside (&self->piece->heights, own)
          + self->piece->heights.thickness / 2;
      q = (PpPoint) { p.x + z * slant.x, p.y + z * slant.y };
      own = pp_frame_to_piece (&self->frame, q);
    }
  return pp_cover_contains (&self->piece->cover, own);
}

static gboolean
covers (const Lying   *self,
        const PpProbe *probe)
{
  double reach = self->piece->heights.reach
                 + fabs (self->base + self->piece->middle) * hypot (probe->slant.x, probe->slant.y)
                 + self->piece->heights.reach / 2;
  PpPoint p = probe->points[0];

  if (fabs (p.x - self->frame.x) > reach || fabs (p.y - self->frame.y) > reach)
    return FALSE;
  for (guint k = 0; k < probe->n; k++)
    if (!covers_point (self, probe->points[k], probe->slant))
      return FALSE;
  return TRUE;
}

gboolean
pp_glance_covers (const PpGlance *self,
                  guint           piece,
                  double          base,
                  PpPose          pose,
                  const PpProbe  *probe)
{
  PpGlanceBody body = { .piece = piece, .base = base };
  Lying lying = lie (self, &body, pose);

  return covers (&lying, probe);
}

PpPoint
pp_glance_aim (const PpGlance *self,
               guint           piece,
               double          base,
               const PpProbe  *probe)
{
  double z = base + self->pieces[piece].middle;

  return (PpPoint) { probe->points[0].x + z * probe->slant.x,
                     probe->points[0].y + z * probe->slant.y };
}

static void
look_at_body (PpGlance *self,
              guint     index)
{
  const PpGlanceBody *body = &self->bodies[index];
  Lying lying = lie (self, body, pp_pose_of (pp_panel_placement (self->panel, index)));

  for (guint k = 0; body->counts && k < self->n_probes; k++)
    if (covers (&lying, &self->probes[k]))
      {
        self->covers[(gsize) index * self->n_probes + k] = TRUE;
        self->dark[k] += lying.piece->dark;
      }
}

static PpGlanceBody
body_of (const PpCheck *check,
         guint          index)
{
  const PpRest *rest = check->rests[index];
  PpGlanceBody body = { .counts = rest->state != PP_STATE_FLOATS };

  pp_panel_find_piece (check->panel, pp_panel_placement (check->panel, index)->piece, &body.piece);
  if (body.counts)
    {
      body.base = rest->plane.c;
      body.a = rest->plane.a;
      body.b = rest->plane.b;
    }
  return body;
}

PpGlance *
pp_glance_new (const PpCheck *check)
{
  PpGlance *self = g_new0 (PpGlance, 1);
  const PpPanel *panel = check->panel;
  double opaque = pp_panel_get_limit (panel, PP_LIMIT_OPAQUE);

  self->panel = pp_panel_ref (panel);
  self->scene = pp_scene_ref (check->scene);
  self->probes = pp_probes_new (check, &self->n_probes);
  self->n_pieces = panel->tray->len;
  self->pieces = g_new (PpGlancePiece, self->n_pieces + 1);
  for (guint i = 0; i < self->n_pieces; i++)
    piece_init (&self->pieces[i], pp_panel_piece (panel, i), opaque);
  self->n_bodies = check->n;
  self->bodies = g_new (PpGlanceBody, self->n_bodies + 1);
  self->covers = g_new0 (guint8, (gsize) self->n_bodies * self->n_probes + 1);
  self->dark = g_new (gint32, self->n_probes + 1);
  for (guint k = 0; k < self->n_probes; k++)
    self->dark[k] = self->probes[k].bare;
  for (guint i = 0; i < self->n_bodies; i++)
    {
      self->bodies[i] = body_of (check, i);
      look_at_body (self, i);
    }
  self->length = check->hang != NULL ? check->conceal->hung.length : 0;
  return self;
}

void
pp_glance_free (PpGlance *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_pieces; i++)
    pp_bands_unref (self->pieces[i].bands);
  g_free (self->pieces);
  g_free (self->probes);
  g_free (self->bodies);
  g_free (self->covers);
  g_free (self->dark);
  pp_scene_unref (self->scene);
  pp_panel_unref (self->panel);
  g_free (self);
}

static void
take_out (const PpGlance *self,
          guint           index,
          gint32         *dark)
{
  const guint8 *covered = self->covers + (gsize) index * self->n_probes;
  gint32 own = self->pieces[self->bodies[index].piece].dark;

  for (guint k = 0; k < self->n_probes; k++)
    dark[k] -= covered[k] ? own : 0;
}

static void
put_in (const PpGlance     *self,
        const PpGlanceBody *body,
        PpPose              pose,
        gint32             *dark)
{
  Lying lying = lie (self, body, pose);

  for (guint k = 0; k < self->n_probes; k++)
    if (covers (&lying, &self->probes[k]))
      dark[k] += lying.piece->dark;
}

static void
apply (const PpGlance *self,
       const PpMoves  *moves,
       gint32         *dark)
{
  for (guint i = 0; i < moves->n; i++)
    {
      const PpMove *move = &moves->moves[i];
      PpGlanceBody added = { .piece = move->index, .counts = TRUE };

      if (move->kind == PP_MOVE_POSE || move->kind == PP_MOVE_REMOVE)
        take_out (self, move->index, dark);
      if (move->kind == PP_MOVE_POSE)
        put_in (self, &self->bodies[move->index], move->pose, dark);
      if (move->kind == PP_MOVE_ADD)
        put_in (self, &added, move->pose, dark);
    }
}

/* What is seen, by kinds. */
typedef struct
{
  double  wire;   /* mm */
  double  barely; /* mm */
  double  views[PP_N_VIEWS]; /* mm */
  double *discs;  /* shares seen */
  double *discs_barely;
} Seen;

static void
add_seen (Seen          *seen,
          const PpProbe *probe)
{
  switch (probe->kind)
    {
    case PP_PROBE_WIRE:
      seen->wire += probe->length;
      break;
    case PP_PROBE_BARELY:
      seen->barely += probe->length;
      break;
    case PP_PROBE_ASLANT:
      seen->views[probe->which] += probe->length;
      break;
    case PP_PROBE_DISC:
      seen->discs[probe->which] += probe->length;
      break;
    case PP_PROBE_DISC_BARELY:
      seen->discs_barely[probe->which] += probe->length;
      break;
    }
}

static double
rate_wire (const PpGlance *self,
           const Seen     *seen)
{
  double worst = 0;

  for (guint v = 0; v < PP_N_VIEWS; v++)
    worst = fmax (worst, seen->views[v]);
  return pp_weigh_wire (self->panel, seen->wire, seen->barely,
                        self->length > 0 ? worst / self->length : 0);
}

double
pp_glance_estimate (const PpGlance *self,
                    const PpMoves  *moves)
{
  g_autofree gint32 *dark = g_memdup2 (self->dark, (self->n_probes + 1) * sizeof *self->dark);
  guint n_holes = self->panel->holes->len;
  g_autofree double *shares = g_new0 (double, 2 * n_holes + 1);
  Seen seen = { .discs = shares, .discs_barely = shares + n_holes };
  double sum;

  if (moves != NULL)
    apply (self, moves, dark);
  for (guint k = 0; k < self->n_probes; k++)
    if (dark[k] < PP_DARK)
      add_seen (&seen, &self->probes[k]);
  sum = self->length > 0 ? rate_wire (self, &seen) : 0;
  for (guint i = 0; i < n_holes; i++)
    sum += pp_weigh_disc (self->panel, i, 1 - shares[i], 1 - shares[n_holes + i]);
  return sum;
}

gint32
pp_glance_darkness (const PpGlance *self,
                    PpPoint         at,
                    gint32         *bare)
{
  PpProbe probe = pp_probe_over (self->scene, at, bare);
  gint32 dark = 0;

  for (guint i = 0; i < self->n_bodies; i++)
    {
      Lying lying = lie (self, &self->bodies[i],
                         pp_pose_of (pp_panel_placement (self->panel, i)));

      if (self->bodies[i].counts && covers (&lying, &probe))
        dark += lying.piece->dark;
    }
  return dark;
}
