/* finding.h: what is wrong, or worth a look, in words a maker understands.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The codes are those of questions.list. A finding's text is one or two plain sentences: what,
 * where, what now, in the maker's unit.
 */
#pragma once

#include "panel/panel.h"
#include "panel/tolerance.h"

G_BEGIN_DECLS

typedef enum
{
  PP_LEVEL_FAULT,   /* do not glue this */
  PP_LEVEL_CAUTION, /* look again */
  PP_LEVEL_NOTE,
} PpLevel;

/* Where a limit comes from. */
typedef enum
{
  PP_ORIGIN_OWN,
  PP_ORIGIN_STANDARD,
  PP_ORIGIN_PRACTICE,
} PpOrigin;

/* Immutable, counted atomically. */
typedef struct
{
  const char         *code;  /* static: "wire-shows" */
  PpLevel             level;
  PpOrigin            origin;
  const char         *text;
  PpPoint             at;    /* panel frame: where to look */
  const char * const *about; /* ids, ended by NULL */
  double              value; /* NAN: none */
  double              limit; /* NAN: none */
  gboolean            quiet; /* the maker knows; never a fault */
} PpFinding;

const char *pp_level_get_name    (PpLevel   level);  /* "fault", "caution", "note" */
const char *pp_origin_get_name   (PpOrigin  origin); /* "own", "std", "practice" */

typedef struct _PpPieceNames PpPieceNames; /* piece-name.h */
typedef struct _PpSaid PpSaid;             /* said.h */

/* A growing list of findings about one panel, while they are asked. */
typedef struct
{
  const PpPanel *panel;
  GPtrArray     *list;  /* PpFinding */
  PpPieceNames  *names; /* nullable, borrowed: of its pieces */
  PpSaid        *said;  /* nullable, borrowed: gets what is said of each placement */
  const PpSaid  *before;        /* nullable, borrowed: what was said, and of what it holds */
  const gboolean *unchanged;
  gboolean        same_pieces;  /* lie there as before, one by one, of the same tray */
} PpFindings;

PpFinding  *pp_finding_ref       (const PpFinding *self);

/* Code and ids, sorted: what makes two findings the same. (transfer full) */
char       *pp_finding_dup_name  (const PpFinding *self);

/* With nothing else. */
void        pp_findings_init     (PpFindings *self,
                                  const PpPanel *panel);
void        pp_findings_clear    (PpFindings *self);
/* Adds a copy of `finding`, whose text is taken (transfer full) and whose `about` is copied;
 * `quiet` is set from the panel. */
void        pp_findings_add      (PpFindings *self,
                                  PpFinding   finding,
                                  char       *text);

/* Whether the program can have a finding of that code. */
gboolean    pp_finding_is_code   (const char *code);

/* A list of ids for `about` on the stack: PP_ABOUT ("a", "b"). */
#define PP_ABOUT(...) ((const char * const []) { __VA_ARGS__, NULL })

/* Limits count as met within PP_TIE: more than, less than. */
static inline gboolean
pp_is_over (double value, double limit)
{
  return value > limit + PP_TIE;
}

static inline gboolean
pp_is_under (double value, double limit)
{
  return value < limit - PP_TIE;
}

/* Worst first: fault, caution, note; then by place: least y, least x. For g_ptr_array_sort(). */
int         pp_finding_compare   (gconstpointer a,
                                  gconstpointer b);

G_END_DECLS
