/* test-line.c: orders and precedence, apart from clocks.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published examples stand with what is known of them; how many orders there are was counted by trying
 * all, in another language. A cycle cannot be written here: links lead from lower numbers to higher
 * ones, as stacks do.
 */
#include "verify.h"

#include "glue/line.h"

#include <math.h>

#define CLOSE 1e-6
#define MAX_NODES 12

typedef struct
{
  const char *name;
  const char *names; /* a letter each, numbered in an order that is published as valid */
  const char *edges; /* pairs of letters */
  guint       n_orders;
} Sorting;

static const Sorting sortings[] = {
  /* The example of the POSIX page on tsort, with its order. */
  { "tsort", "abcdefgh", "ab de fg ef", 840 },
  /* An encyclopaedia's example of topological sorting, 10 and 11 written as 0 and b. */
  { "eight", "573b8290", "5b 7b 78 38 30 b2 b9 b0 89", 150 },
  /* 3 after 2 and 1, 1 after 0. */
  { "four", "2013", "23 13 01", 3 },
};

static guint
find_letter (const char *names, char letter)
{
  return (guint) (strchr (names, letter) - names);
}

static PpProblem
read_sorting (const Sorting *sorting,
              PpTask        *tasks,
              PpLink        *links)
{
  g_auto (GStrv) pairs = g_strsplit (sorting->edges, " ", -1);
  PpProblem problem = { .n_tasks = (guint) strlen (sorting->names), .tasks = tasks, .links = links,
                        .mixing = 1, .life = 5, .largest = 6, .sitting = NAN };

  for (guint i = 0; i < problem.n_tasks; i++)
    tasks[i] = (PpTask) { 1, 0.1, 0, 0, PP_NO_RANK };
  for (guint i = 0; pairs[i] != NULL; i++)
    links[problem.n_links++] = (PpLink) {
      find_letter (sorting->names, pairs[i][0]), find_letter (sorting->names, pairs[i][1]), 0,
    };

  return problem;
}

/* Heap's way from one permutation of the depths to the next; FALSE after the last. */
static gboolean
next_permutation (PpTask *tasks, guint n, guint *counters)
{
  for (guint i = 1; i < n; i++)
    {
      if (counters[i] == i)
        {
          counters[i] = 0;
          continue;
        }
      const guint k = i % 2 == 0 ? 0 : counters[i];
      const double depth = tasks[k].depth;

      tasks[k].depth = tasks[i].depth;
      tasks[i].depth = depth;
      counters[i]++;
      return TRUE;
    }

  return FALSE;
}

/* With every way of lying far and near there come out all orders that are valid, and no other. */
static void
test_sorting (gconstpointer data)
{
  const Sorting *sorting = data;
  PpTask tasks[MAX_NODES];
  PpLink links[MAX_NODES];
  guint counters[MAX_NODES] = { 0 };
  const PpProblem problem = read_sorting (sorting, tasks, links);
  g_autoptr (GHashTable) orders = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < problem.n_tasks; i++)
    tasks[i].depth = i;
  do
    {
      g_autoptr (PpLine) line = pp_line_new (&problem);
      char order[MAX_NODES + 1] = { 0 };

      for (guint k = 0; k < line->n; k++)
        order[k] = sorting->names[pp_line_get_task (line, k)];
      for (guint i = 0; i < problem.n_links; i++)
        g_assert_cmpuint (find_letter (order, sorting->names[links[i].first]), <,
                          find_letter (order, sorting->names[links[i].second]));
      g_hash_table_add (orders, g_strdup (order));
    }
  while (next_permutation (tasks, problem.n_tasks, counters));

  g_assert_cmpuint (g_hash_table_size (orders), ==, sorting->n_orders);
  g_assert_true (g_hash_table_contains (orders, sorting->names));
}

typedef struct
{
  const char *name;
  double      limit;
  guint       n_jobs;
  int         minutes[6];
  guint       n_mixes;
} Packing;

/* Fewest mixes within a pot life, found by trying everything. */
static const Packing packings[] = {
  { "six-jobs", 5, 6, { 4, 3, 3, 2, 2, 1 }, 3 },
  { "long-life", 10, 5, { 6, 5, 4, 3, 2 }, 2 },
  { "full-mixes", 9, 6, { 4, 4, 3, 3, 2, 2 }, 2 },
};

/* Wherever they lie. */
static void
test_packing (gconstpointer data)
{
  const Packing *packing = data;
  PpTask tasks[MAX_NODES];
  guint counters[MAX_NODES] = { 0 };
  PpProblem problem = { .n_tasks = packing->n_jobs, .tasks = tasks, .mixing = 1,
                        .life = packing->limit + 1, .largest = 6, .sitting = NAN };
  double work = 0;

  for (guint i = 0; i < packing->n_jobs; i++)
    {
      tasks[i] = (PpTask) { packing->minutes[i], 0.1, 0, i, PP_NO_RANK };
      work += packing->minutes[i];
    }
  do
    {
      g_autoptr (PpSchedule) schedule = pp_schedule_new (&problem, 0, NULL, NULL, NULL, NULL, NULL);

      g_assert_cmpstr (verify_schedule (&problem, schedule), ==, NULL);
      g_assert_cmpuint (schedule->n_batches, ==, packing->n_mixes);
      g_assert_cmpfloat_with_epsilon (schedule->end, work + packing->n_mixes, CLOSE);
      g_assert_true (schedule->optimal);
    }
  while (next_permutation (tasks, packing->n_jobs, counters));
}

typedef struct
{
  const char *name;
  const char *activities; /* letter, duration, letters of those before it */
  double      length;
} Network;

/* Critical paths as lecture slides (the first) and the answer pages of textbooks print them. */
static const Network networks[] = {
  { "ten", "A6 B3 C4 D2A E3B F5C G3C H5EF I5D J3GH", 17 },
  { "ten-in-threes", "A2 B4A C5A D2B E1B F8BC G3DE H5F I4F J7GHI", 27 },
  { "seven", "A4 B7A C9B D3B E14D F10CD G11FE", 41 },
  { "seven-short", "A6 B2A C2A D3B F2C E4DF G1E", 16 },
};

/* An activity is a job of no length with a wait after it; hands are then free for all at once, and
 * the last job, which waits for all, ends when the path does. */
static void
test_network (gconstpointer data)
{
  const Network *network = data;
  g_auto (GStrv) words = g_strsplit (network->activities, " ", -1);
  const guint n = g_strv_length (words);
  PpTask tasks[MAX_NODES] = { { 0 } };
  PpLink links[MAX_NODES * MAX_NODES];
  char names[MAX_NODES + 1] = { 0 };
  PpProblem problem = { .n_tasks = n + 1, .tasks = tasks, .links = links, .life = 1, .largest = 6,
                        .sitting = NAN };
  double durations[MAX_NODES];

  for (guint i = 0; i < n; i++)
    {
      char *before;

      tasks[i].rank = PP_NO_RANK;
      names[i] = words[i][0];
      durations[i] = g_ascii_strtod (words[i] + 1, &before);
      for (; *before != '\0'; before++)
        {
          const guint first = find_letter (names, *before);

          links[problem.n_links++] = (PpLink) { first, i, durations[first] };
        }
      links[problem.n_links++] = (PpLink) { i, n, durations[i] };
    }

  tasks[n].rank = PP_NO_RANK;
  g_autoptr (PpSchedule) schedule = pp_schedule_new (&problem, 0, NULL, NULL, NULL, NULL, NULL);

  g_assert_cmpstr (verify_schedule (&problem, schedule), ==, NULL);
  g_assert_true (schedule->optimal);
  g_assert_cmpfloat_with_epsilon (schedule->end, network->length, CLOSE);
  g_assert_cmpfloat_with_epsilon (schedule->lower_bound, network->length, CLOSE);
}

/* Whether a way of at least `least` edges leads from a to b. */
static gboolean
leads (gboolean edges[MAX_NODES][MAX_NODES], guint a, guint b, int least)
{
  if (least <= 1 && edges[a][b])
    return TRUE;
  for (guint c = a + 1; c < b; c++)
    if (edges[a][c] && leads (edges, c, b, least - 1))
      return TRUE;

  return FALSE;
}

static void
test_closure (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint round = 0; round < 300; round++)
    {
      gboolean edges[MAX_NODES][MAX_NODES] = { { FALSE } };
      const int thinness = g_rand_int_range (rand, 1, 6);
      g_autoptr (PpClosure) closure = pp_closure_new (MAX_NODES);

      for (guint b = 1; b < MAX_NODES; b++)
        for (guint a = b; a-- > 0;)
          {
            edges[a][b] = g_rand_int_range (rand, 0, thinness) == 0;
            if (edges[a][b])
              g_assert_cmpint (pp_closure_add (closure, a, b), ==, !leads (edges, a, b, 2));
          }
      for (guint b = 0; b < MAX_NODES; b++)
        for (guint a = 0; a < MAX_NODES; a++)
          g_assert_cmpint (pp_closure_before (closure, a, b), ==, leads (edges, a, b, 1));
    }
}

/* Rows of more than one word of bits. */
static void
test_closure_long (void)
{
  const guint n = 200;
  g_autoptr (PpClosure) closure = pp_closure_new (n);

  for (guint i = 1; i < n; i++)
    g_assert_true (pp_closure_add (closure, i - 1, i));
  for (guint b = 0; b < n; b++)
    for (guint a = 0; a < n; a++)
      g_assert_cmpint (pp_closure_before (closure, a, b), ==, a < b);
}

#define ADD_ROWS(rows, prefix, test)                                     \
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)                        \
    {                                                                    \
      g_autofree char *path = g_strconcat (prefix, rows[i].name, NULL);  \
                                                                         \
      g_test_add_data_func (path, &rows[i], test);                       \
    }

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD_ROWS (sortings, "/line/sorting/", test_sorting)
  ADD_ROWS (packings, "/line/packing/", test_packing)
  ADD_ROWS (networks, "/line/network/", test_network)
  g_test_add_func ("/line/closure/random", test_closure);
  g_test_add_func ("/line/closure/long", test_closure_long);

  return g_test_run ();
}
