/* conceal-findings.c: wire, knots and holes that can be seen from the front.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/conceal-private.h"
#include "check/piece-name.h"
#include "check/questions.h"

#include "panel/hole-name.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/polygon.h"

/* The placement whose outline is nearest to `p`, FALSE without any. */
static gboolean
find_nearest (const PpScene *scene,
              PpPoint        p,
              guint         *index)
{
  double least = INFINITY;

  for (guint i = 0; i < scene->n_bodies; i++)
    {
      const PpBody *body = scene->bodies[i];
      double distance;

      if (!pp_box_meets (pp_box_grow (body->box, least), (PpBox) { p.x, p.y, p.x, p.y }))
        continue;
      distance = pp_bands_distance (pp_body_get_bands (body), p, least);
      if (pp_is_under (distance, least))
        {
          least = distance;
          *index = i;
        }
    }
  return scene->n_bodies > 0;
}

typedef enum
{
  AT_PLACE, /* no piece to go by */
  LEFT_OF,
  RIGHT_OF,
  ABOVE,
  BELOW
} Bearing;

/* The name of the piece to go by, or the place itself. (transfer full) */
static char *
describe_place (const PpScene *scene,
                PpPoint        p,
                Bearing       *bearing)
{
  guint index = 0;
  PpPoint middle;
  double dx, dy;

  *bearing = AT_PLACE;
  if (!find_nearest (scene, p, &index))
    return pp_place_format (scene->panel, p);
  middle = scene->bodies[index]->centroid;
  dx = p.x - middle.x;
  dy = p.y - middle.y;
  if (fabs (dx) >= fabs (dy))
    *bearing = dx < 0 ? LEFT_OF : RIGHT_OF;
  else
    *bearing = dy < 0 ? ABOVE : BELOW;
  return pp_piece_name_of (scene, index);
}

/* The longest stretch in plain view that is not beyond the glass. */
static const PpExposed *
find_longest (const PpPath *path,
              guint        *n)
{
  const PpExposed *longest = NULL;

  *n = 0;
  for (guint i = 0; i < path->n_exposed; i++)
    if (!path->exposed[i].beyond)
      {
        (*n)++;
        if (longest == NULL || pp_is_over (path->exposed[i].length, longest->length))
          longest = &path->exposed[i];
      }
  return longest;
}

static PpPoint
midway (PpPoint a,
        PpPoint b)
{
  return (PpPoint) { (a.x + b.x) / 2, (a.y + b.y) / 2 };
}

/* One stretch of wire. (transfer full) */
static char *
say_stretch (const char *length,
             Bearing     bearing,
             const char *place)
{
  switch (bearing)
    {
    case LEFT_OF:
      /* Translators: a length and the name of a piece, here and in the sentences that follow. */
      return g_strdup_printf (_("%s of wire shows, left of %s. Move a piece over it."), length,
                              place);
    case RIGHT_OF:
      return g_strdup_printf (_("%s of wire shows, right of %s. Move a piece over it."), length,
                              place);
    case ABOVE:
      return g_strdup_printf (_("%s of wire shows, above %s. Move a piece over it."), length,
                              place);
    case BELOW:
      return g_strdup_printf (_("%s of wire shows, below %s. Move a piece over it."), length,
                              place);
    case AT_PLACE:
      break;
    }
  /* Translators: a length, and a place such as "120 mm from the left and 45 mm from the top". */
  return g_strdup_printf (_("%s of wire shows, %s. Move a piece over it."), length, place);
}

/* Several of them. (transfer full) */
static char *
say_stretches (const char *length,
               guint       n,
               Bearing     bearing,
               const char *place)
{
  switch (bearing)
    {
    case LEFT_OF:
      /* Translators: a length, a number of 2 or more and the name of a piece, here and in the
       * sentences that follow. */
      return g_strdup_printf (_("%s of wire shows in %u places, the longest left of %s. Move "
                                "pieces over them."), length, n, place);
    case RIGHT_OF:
      return g_strdup_printf (_("%s of wire shows in %u places, the longest right of %s. Move "
                                "pieces over them."), length, n, place);
    case ABOVE:
      return g_strdup_printf (_("%s of wire shows in %u places, the longest above %s. Move pieces "
                                "over them."), length, n, place);
    case BELOW:
      return g_strdup_printf (_("%s of wire shows in %u places, the longest below %s. Move pieces "
                                "over them."), length, n, place);
    case AT_PLACE:
      break;
    }
  return g_strdup_printf (_("%s of wire shows in %u places, the longest %s. Move pieces over "
                            "them."), length, n, place);
}

/* (transfer full) */
static char *
describe_wire (const PpScene *scene,
               double         exposed,
               PpPoint        at,
               guint          n_stretches)
{
  Bearing bearing;
  g_autofree char *length = pp_length_format (exposed, scene->panel->units);
  g_autofree char *place = describe_place (scene, at, &bearing);

  return n_stretches == 1 ? say_stretch (length, bearing, place)
                          : say_stretches (length, n_stretches, bearing, place);
}

/* FALSE if there is nothing to say. */
static gboolean
ask_wire (PpFindings      *findings,
          const PpScene   *scene,
          const PpConceal *conceal)
{
  double fault = pp_panel_get_limit (scene->panel, PP_LIMIT_EXPOSED_FAULT);
  double caution = pp_panel_get_limit (scene->panel, PP_LIMIT_EXPOSED_CAUTION);
  double exposed = pp_path_get_exposed (&conceal->hung);
  guint n;
  const PpExposed *longest = find_longest (&conceal->hung, &n);
  gboolean is_fault = pp_is_over (exposed, fault);
  PpFinding finding = {
    .code = "wire-shows",
    .level = is_fault ? PP_LEVEL_FAULT : PP_LEVEL_CAUTION,
    .about = PP_ABOUT ("wire"),
    .value = exposed,
    .limit = is_fault ? fault : caution,
  };

  if (!is_fault && !pp_is_over (exposed, caution))
    return FALSE;
  finding.at = midway (longest->from, longest->to);
  pp_findings_add (findings, finding, describe_wire (scene, exposed, finding.at, n));
  return TRUE;
}

static void
ask_wire_barely (PpFindings      *findings,
                 const PpScene   *scene,
                 const PpConceal *conceal)
{
  double limit = pp_panel_get_limit (scene->panel, PP_LIMIT_EXPOSED_CAUTION);
  g_autofree char *length = NULL;
  g_autofree char *shift = NULL;
  PpFinding finding = {
    .code = "hidden-barely",
    .level = PP_LEVEL_CAUTION,
    .at = pp_panel_get_hole_middle (scene->panel),
    .about = PP_ABOUT ("wire"),
    .value = conceal->barely,
    .limit = limit,
  };

  if (!pp_is_over (conceal->barely, limit))
    return;
  length = pp_length_format (conceal->barely, scene->panel->units);
  shift = pp_length_format (pp_panel_get_limit (scene->panel, PP_LIMIT_PLACE),
                            scene->panel->units);
  pp_findings_add (findings, finding,
                   g_strdup_printf (_("The wire is only just hidden: %s of it may show if pieces "
                                      "land up to %s off. Let them reach farther over it."),
                                    length, shift));
}

/* From which of nine directions, each -1, 0 or 1 to the right and up. (transfer full) */
static char *
say_aslant (int sideways,
            int updown,
            int percent)
{
  if (sideways < 0 && updown < 0)
    return g_strdup_printf (_("Seen from the left and below, %d %% of the wire shows. Let pieces "
                              "reach farther over it."), percent);
  if (sideways < 0 && updown > 0)
    return g_strdup_printf (_("Seen from the left and above, %d %% of the wire shows. Let pieces "
                              "reach farther over it."), percent);
  if (sideways < 0)
    return g_strdup_printf (_("Seen from the left, %d %% of the wire shows. Let pieces reach "
                              "farther over it."), percent);
  if (sideways > 0 && updown < 0)
    return g_strdup_printf (_("Seen from the right and below, %d %% of the wire shows. Let pieces "
                              "reach farther over it."), percent);
  if (sideways > 0 && updown > 0)
    return g_strdup_printf (_("Seen from the right and above, %d %% of the wire shows. Let pieces "
                              "reach farther over it."), percent);
  if (sideways > 0)
    return g_strdup_printf (_("Seen from the right, %d %% of the wire shows. Let pieces reach "
                              "farther over it."), percent);
  if (updown < 0)
    return g_strdup_printf (_("Seen from below, %d %% of the wire shows. Let pieces reach farther "
                              "over it."), percent);
  if (updown > 0)
    return g_strdup_printf (_("Seen from above, %d %% of the wire shows. Let pieces reach farther "
                              "over it."), percent);
  return g_strdup_printf (_("Seen straight on, %d %% of the wire shows. Let pieces reach farther "
                            "over it."), percent);
}

static void
ask_aslant (PpFindings      *findings,
            const PpScene   *scene,
            const PpConceal *conceal)
{
  const PpView *worst = &conceal->worst;
  PpFinding finding = {
    .code = "shows-aslant",
    .level = PP_LEVEL_NOTE,
    .at = pp_panel_get_hole_middle (scene->panel),
    .about = PP_ABOUT ("wire"),
    .value = worst->share,
    .limit = 1,
  };
  int h = (worst->sideways > 0) - (worst->sideways < 0);
  int v = (worst->updown > 0) - (worst->updown < 0);

  if (!pp_is_under (worst->share, 1))
    return;
  /* Never "0 %" of something that shows. */
  pp_findings_add (findings, finding,
                   say_aslant (h, v, (int) fmax (1, round (100 * (1 - worst->share)))));
}

/* One knot or hole. Takes `text`. */
static void
say_disc (PpFindings    *findings,
          const PpScene *scene,
          const PpHole  *hole,
          const char    *code,
          PpLevel        level,
          double         share,
          char          *text)
{
  PpFinding finding = {
    .code = code,
    .level = level,
    .at = { hole->x, hole->y },
    .about = PP_ABOUT (hole->id),
    .value = share,
    .limit = pp_panel_get_limit (scene->panel, PP_LIMIT_KNOT_SHARE),
  };

  pp_findings_add (findings, finding, text);
}

static void
ask_knot (PpFindings        *findings,
          const PpScene     *scene,
          const PpDiscShare *knot,
          const PpHole      *hole)
{
  double limit = pp_panel_get_limit (scene->panel, PP_LIMIT_KNOT_SHARE);

  if (pp_is_under (knot->share, limit))
    say_disc (findings, scene, hole, "knot-shows", PP_LEVEL_FAULT, knot->share,
              g_strdup_printf (_("The knot of the %s hole shows. Move a piece over it."),
                               pp_hole_name (hole->id)));
  else if (pp_is_under (knot->barely, limit))
    say_disc (findings, scene, hole, "knot-barely", PP_LEVEL_CAUTION, knot->barely,
              g_strdup_printf (_("The knot of the %s hole is only just hidden. Move a piece "
                                 "farther over it."), pp_hole_name (hole->id)));
}

static void
ask_hole (PpFindings        *findings,
          const PpScene     *scene,
          const PpDiscShare *share,
          guint              index)
{
  const PpHole *hole = pp_panel_hole (scene->panel, index);

  if (pp_wire_ends_in (scene->panel->wire, hole->id))
    return;
  if (!pp_is_under (share->share, pp_panel_get_limit (scene->panel, PP_LIMIT_KNOT_SHARE)))
    return;
  say_disc (findings, scene, hole, "hole-shows", PP_LEVEL_CAUTION, share->share,
            g_strdup_printf (_("The %s hole, in which no wire ends, shows. Move a piece over it."),
                             pp_hole_name (hole->id)));
}

void
pp_ask_conceal (PpFindings    *findings,
                const PpCheck *check)
{
  const PpScene *scene = check->scene;
  const PpConceal *conceal = check->conceal;

  if (conceal == NULL)
    return;
  if (conceal->has_wire)
    {
      if (!ask_wire (findings, scene, conceal))
        ask_wire_barely (findings, scene, conceal);
      ask_aslant (findings, scene, conceal);
    }
  for (guint k = 0; k < scene->n_knots; k++)
    ask_knot (findings, scene, &conceal->knots[k], pp_scene_knot_hole (scene, k));
  for (guint i = 0; i < conceal->n_holes; i++)
    ask_hole (findings, scene, &conceal->holes[i], i);
}
