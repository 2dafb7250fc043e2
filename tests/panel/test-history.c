/* test-history.c: undo and redo, as scripts of acts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "panel/history.h"

#include "small-panel.h"

typedef enum
{
  END,
  PUSH,    /* panel, label */
  DRAG,    /* panel, label; merges with others of the key given */
  SEAL,
  BARRIER, /* panel */
  UNDO,
  REDO,
  NO_UNDO, /* there is nothing to undo */
  NO_REDO,
  DROP,
  NO_DROP,
} Act;

/* Panels go by their titles; what is expected holds after the act. */
typedef struct
{
  Act         act;
  const char *panel;
  const char *label;
  const char *key;
  const char *present;
  const char *undo;
  const char *redo;
} Step;

typedef struct
{
  const char *name;
  Step        steps[16];
} Script;

static const Script scripts[] = {
  { "nothing-yet", {
    { NO_UNDO, NULL, NULL, NULL, "start", NULL, NULL },
    { NO_REDO, NULL, NULL, NULL, "start", NULL, NULL } } },
  { "back-and-forth", {
    { PUSH, "a", "Move oxeye", NULL, "a", "Move oxeye", NULL },
    { PUSH, "b", "Turn fern", NULL, "b", "Turn fern", NULL },
    { NO_REDO, NULL, NULL, NULL, "b", "Turn fern", NULL },
    { UNDO, NULL, NULL, NULL, "a", "Move oxeye", "Turn fern" },
    { UNDO, NULL, NULL, NULL, "start", NULL, "Move oxeye" },
    { NO_UNDO, NULL, NULL, NULL, "start", NULL, "Move oxeye" },
    { REDO, NULL, NULL, NULL, "a", "Move oxeye", "Turn fern" },
    { REDO, NULL, NULL, NULL, "b", "Turn fern", NULL },
    { NO_REDO, NULL, NULL, NULL, "b", "Turn fern", NULL } } },
  { "push-forgets-what-was-undone", {
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { PUSH, "b", "B", NULL, "b", "B", NULL },
    { UNDO, NULL, NULL, NULL, "a", "A", "B" },
    { UNDO, NULL, NULL, NULL, "start", NULL, "A" },
    { PUSH, "c", "C", NULL, "c", "C", NULL },
    { NO_REDO, NULL, NULL, NULL, "c", "C", NULL },
    { UNDO, NULL, NULL, NULL, "start", NULL, "C" } } },
  { "same-panel-is-no-step", {
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { PUSH, "b", "B", NULL, "b", "B", NULL },
    { UNDO, NULL, NULL, NULL, "a", "A", "B" },
    { PUSH, "a", "Again", NULL, "a", "A", "B" },
    { REDO, NULL, NULL, NULL, "b", "B", NULL } } },
  { "one-drag-one-step", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { DRAG, "b", "Move", "drag", "b", "Move", NULL },
    { DRAG, "c", "Move far", "drag", "c", "Move far", NULL },
    { UNDO, NULL, NULL, NULL, "start", NULL, "Move far" },
    { REDO, NULL, NULL, NULL, "c", "Move far", NULL } } },
  { "other-key-other-step", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { DRAG, "b", "Turn", "turn", "b", "Turn", NULL },
    { DRAG, "c", "Move", "drag", "c", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "b", "Turn", "Move" },
    { UNDO, NULL, NULL, NULL, "a", "Move", "Turn" } } },
  { "no-key-never-merges", {
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { PUSH, "b", "A", NULL, "b", "A", NULL },
    { UNDO, NULL, NULL, NULL, "a", "A", "A" } } },
  { "seal-ends-a-drag", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { DRAG, "b", "Move", "drag", "b", "Move", NULL },
    { SEAL, NULL, NULL, NULL, "b", "Move", NULL },
    { DRAG, "c", "Move again", "drag", "c", "Move again", NULL },
    { DRAG, "d", "Move again", "drag", "d", "Move again", NULL },
    { UNDO, NULL, NULL, NULL, "b", "Move", "Move again" },
    { UNDO, NULL, NULL, NULL, "start", NULL, "Move" } } },
  { "undo-ends-a-drag", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { PUSH, "b", "Turn", NULL, "b", "Turn", NULL },
    { UNDO, NULL, NULL, NULL, "a", "Move", "Turn" },
    { DRAG, "c", "Move", "drag", "c", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "a", "Move", "Move" } } },
  { "redo-ends-a-drag", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "start", NULL, "Move" },
    { REDO, NULL, NULL, NULL, "a", "Move", NULL },
    { DRAG, "b", "Move", "drag", "b", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "a", "Move", "Move" } } },
  { "a-dropped-step-is-forgotten", {
    { NO_DROP, NULL, NULL, NULL, "start", NULL, NULL },
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { DRAG, "b", "Move", "drag", "b", "Move", NULL },
    { DROP, NULL, NULL, NULL, "a", "A", NULL },
    { NO_REDO, NULL, NULL, NULL, "a", "A", NULL },
    { DRAG, "c", "Move", "drag", "c", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "a", "A", "Move" } } },
  { "barrier-is-the-end-of-undo", {
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { PUSH, "b", "B", NULL, "b", "B", NULL },
    { UNDO, NULL, NULL, NULL, "a", "A", "B" },
    { BARRIER, "c", NULL, NULL, "c", NULL, NULL },
    { NO_UNDO, NULL, NULL, NULL, "c", NULL, NULL },
    { NO_REDO, NULL, NULL, NULL, "c", NULL, NULL },
    { PUSH, "d", "D", NULL, "d", "D", NULL },
    { UNDO, NULL, NULL, NULL, "c", NULL, "D" },
    { NO_UNDO, NULL, NULL, NULL, "c", NULL, "D" } } },
  { "barrier-ends-a-drag", {
    { DRAG, "a", "Move", "drag", "a", "Move", NULL },
    { BARRIER, "b", NULL, NULL, "b", NULL, NULL },
    { DRAG, "c", "Move", "drag", "c", "Move", NULL },
    { UNDO, NULL, NULL, NULL, "b", NULL, "Move" } } },
  { "barrier-of-the-present", {
    { PUSH, "a", "A", NULL, "a", "A", NULL },
    { BARRIER, "a", NULL, NULL, "a", NULL, NULL },
    { NO_UNDO, NULL, NULL, NULL, "a", NULL, NULL } } },
};

static PpPanel *
titled (const char *title)
{
  SmallPanel words = { .title = title };

  return small_panel_good (&words);
}

/* Panels by title, so that the same title is the same panel. */
static const PpPanel *
get_panel (GHashTable *panels,
           const char *title)
{
  if (title == NULL)
    return NULL;
  if (!g_hash_table_contains (panels, title))
    g_hash_table_insert (panels, (gpointer) title, titled (title));
  return g_hash_table_lookup (panels, title);
}

static void
perform (PpHistory     *history,
         const Step    *step,
         const PpPanel *panel)
{
  switch (step->act)
    {
    case PUSH:
    case DRAG:
      pp_history_push (history, panel, step->label, step->key);
      break;
    case SEAL:
      pp_history_seal (history);
      break;
    case BARRIER:
      pp_history_barrier (history, panel);
      break;
    case UNDO:
    case NO_UNDO:
      g_assert_cmpint (pp_history_undo (history), ==, step->act == UNDO);
      break;
    case REDO:
    case NO_REDO:
      g_assert_cmpint (pp_history_redo (history), ==, step->act == REDO);
      break;
    case DROP:
    case NO_DROP:
      g_assert_cmpint (pp_history_drop (history), ==, step->act == DROP);
      break;
    case END:
      g_assert_not_reached ();
    }
}

static void
test_script (gconstpointer data)
{
  const Script *script = data;
  g_autoptr (GHashTable) panels
      = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) pp_panel_unref);
  g_autoptr (PpHistory) history = pp_history_new (get_panel (panels, "start"));

  for (const Step *step = script->steps; step->act != END; step++)
    {
      perform (history, step, get_panel (panels, step->panel));
      g_assert_cmpstr (pp_history_get_present (history)->title, ==, step->present);
      g_assert_true (pp_history_get_present (history) == get_panel (panels, step->present));
      g_assert_cmpstr (pp_history_get_undo (history), ==, step->undo);
      g_assert_cmpstr (pp_history_get_redo (history), ==, step->redo);
    }
}

static void
push_number (PpHistory *history,
             guint      number)
{
  g_autofree char *title = g_strdup_printf ("%u", number);
  g_autoptr (PpPanel) panel = titled (title);

  pp_history_push (history, panel, title, NULL);
}

/* Five more acts than are kept: those five cannot be undone. */
static void
test_cap (void)
{
  g_autoptr (PpPanel) start = titled ("0");
  g_autoptr (PpHistory) history = pp_history_new (start);
  guint undone = 0, redone = 0;

  for (guint i = 1; i <= 1005; i++)
    push_number (history, i);
  g_assert_cmpstr (pp_history_get_present (history)->title, ==, "1005");
  while (pp_history_undo (history))
    undone++;
  g_assert_cmpuint (undone, ==, 1000);
  g_assert_cmpuint (PP_HISTORY_MAX, ==, 1000);
  g_assert_cmpstr (pp_history_get_present (history)->title, ==, "5");
  g_assert_cmpstr (pp_history_get_redo (history), ==, "6");
  while (pp_history_redo (history))
    redone++;
  g_assert_cmpuint (redone, ==, 1000);
  g_assert_cmpstr (pp_history_get_present (history)->title, ==, "1005");
}

static void
test_merge_at_cap (void)
{
  g_autoptr (PpPanel) start = titled ("0");
  g_autoptr (PpPanel) first = titled ("first");
  g_autoptr (PpPanel) second = titled ("second");
  g_autoptr (PpHistory) history = pp_history_new (start);
  guint undone = 0;

  for (guint i = 1; i <= 1000; i++)
    push_number (history, i);
  pp_history_push (history, first, "Move", "drag");
  pp_history_push (history, second, "Move", "drag");
  while (pp_history_undo (history))
    undone++;
  g_assert_cmpuint (undone, ==, 1000);
  g_assert_cmpstr (pp_history_get_present (history)->title, ==, "1");
}

/* A panel that only the history still holds, as one of what was undone. */
static void
test_push_undone (void)
{
  g_autoptr (PpPanel) start = titled ("start");
  g_autoptr (PpHistory) history = pp_history_new (start);
  const PpPanel *only;

  push_number (history, 1);
  only = pp_history_get_present (history);
  g_assert_true (pp_history_undo (history));
  pp_history_push (history, only, "Again", NULL);
  g_assert_cmpstr (pp_history_get_present (history)->title, ==, "1");
  g_assert_cmpstr (pp_history_get_undo (history), ==, "Again");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autofree char *path = g_strdup_printf ("/history/%s", scripts[i].name);

      g_test_add_data_func (path, &scripts[i], test_script);
    }
  g_test_add_func ("/history/cap", test_cap);
  g_test_add_func ("/history/merge-at-cap", test_merge_at_cap);
  g_test_add_func ("/history/push-undone", test_push_undone);
  return g_test_run ();
}
