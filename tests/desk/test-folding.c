/* test-folding.c: which findings stand open, told as the maker's acts one after another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A finding is written as its level (f, c, n) and a name: "fwire cleaf".
 */
#include "desk/folding.h"

#include <string.h>

static PpFinding *
make_finding (const char *word)
{
  static const char levels[] = "fcn";
  PpFinding *finding = g_new0 (PpFinding, 1);

  finding->level = strchr (levels, word[0]) - levels;
  finding->code = "code";
  finding->about = (const char * const *) g_strsplit (word + 1, ",", -1);
  return finding;
}

static void
free_finding (gpointer data)
{
  PpFinding *finding = data;

  g_strfreev ((char **) finding->about);
  g_free (finding);
}

static GPtrArray *
make_findings (const char *words)
{
  g_auto (GStrv) split = g_strsplit (words, " ", -1);
  GPtrArray *findings = g_ptr_array_new_with_free_func (free_finding);

  for (guint i = 0; split[i] != NULL; i++)
    g_ptr_array_add (findings, make_finding (split[i]));
  return findings;
}

/* The keys that stand open, without their code, in the order of the findings. */
static char *
say_open (PpFolding *folding,
          GPtrArray *keys)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < keys->len; i++)
    if (pp_folding_is_open (folding, g_ptr_array_index (keys, i)))
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                              (const char *) g_ptr_array_index (keys, i) + strlen ("code "));
  return g_string_free (text, FALSE);
}

typedef struct
{
  const char *ask;      /* opened by the maker before the findings come, or NULL */
  const char *findings; /* worst first */
  const char *open;
} Step;

typedef struct
{
  const char *name;
  Step        steps[8];
} Script;

static const Script scripts[] = {
  { "none", { { NULL, "", "" } } },
  { "few", { { NULL, "fa cb", "a b" } } },
  { "worst", { { NULL, "fa fb cc nd", "a b c" } } },
  /* the least grave makes room, then the one opened longest ago */
  { "asked", { { NULL, "fa fb cc cd ne nf", "a b c" },
               { "e", "fa fb cc cd ne nf", "a b e" },
               { "f", "fa fb cc cd ne nf", "a e f" },
               { "d", "fa fb cc cd ne nf", "d e f" },
               { "c", "fa fb cc cd ne nf", "c d f" },
               { "f", "fa fb cc cd ne nf", "c d f" },
               { "a", "fa fb cc cd ne nf", "a c f" } } },
  /* one that moves down its own level does not change places with another */
  { "stays", { { NULL, "ca cb cc cd", "a b c" },
               { NULL, "cd cc cb ca", "c b a" },
               { NULL, "cd ca cc cb", "a c b" } } },
  { "graver", { { NULL, "ca cb cc", "a b c" },
                { NULL, "fd ca cb cc", "d a b" },
                { NULL, "ca cb cc", "a b c" } } },
  /* what was opened and is gone leaves its place, and has it again */
  { "gone", { { "d", "ca cb cc nd", "a b d" },
              { NULL, "ca cb cc", "a b c" },
              { NULL, "ca cb cc nd", "a b d" } } },
  { "unknown", { { "z", "ca cb cc nd", "a b c" } } },
};

static void
test_script (gconstpointer data)
{
  const Script *script = data;
  g_autoptr (PpFolding) folding = pp_folding_new ();

  for (guint i = 0; i < G_N_ELEMENTS (script->steps) && script->steps[i].findings != NULL; i++)
    {
      const Step *step = &script->steps[i];
      g_autoptr (GPtrArray) findings = *step->findings != '\0' ? make_findings (step->findings)
                                                              : g_ptr_array_new ();
      g_autoptr (GPtrArray) keys = pp_finding_keys (findings);
      g_autofree char *key = g_strconcat ("code ", step->ask, NULL);
      g_autofree char *open = NULL;

      if (step->ask != NULL)
        pp_folding_ask (folding, key);
      pp_folding_fold (folding, findings, keys);
      open = say_open (folding, keys);
      g_assert_cmpstr (open, ==, step->open);
    }
}

/* The ids are a set; a second finding about the same set is another one all the same. */
static void
test_keys (void)
{
  g_autoptr (GPtrArray) findings = make_findings ("fa,b cb,a na cab");
  g_autoptr (GPtrArray) again = make_findings ("cb,a na fa,b");
  g_autoptr (GPtrArray) keys = pp_finding_keys (findings);
  g_autoptr (GPtrArray) others = pp_finding_keys (again);

  g_assert_cmpstr (keys->pdata[0], ==, others->pdata[0]);
  g_assert_cmpstr (keys->pdata[1], ==, others->pdata[2]);
  g_assert_cmpstr (keys->pdata[2], ==, others->pdata[1]);
  for (guint i = 0; i < keys->len; i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpstr (keys->pdata[i], !=, keys->pdata[j]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autofree char *path = g_strconcat ("/folding/", scripts[i].name, NULL);

      g_test_add_data_func (path, &scripts[i], test_script);
    }
  g_test_add_func ("/folding/keys", test_keys);
  return g_test_run ();
}
