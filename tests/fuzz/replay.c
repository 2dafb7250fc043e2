/* replay.c: a harness without libFuzzer: the corpus, and seeded changes of it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     fuzz-NAME CORPUS CHANGES
 *
 * Says TAP. Each file of the corpus is tried as it is and then changed CHANGES times, in a child, so
 * that a crash is told with its number; the dice are thrown by name and number, so the same file and
 * number give the same bytes everywhere. `fuzz-NAME FILE` tries one file and nothing else;
 * `fuzz-NAME CORPUS/FILE NUMBER` writes the changed bytes to the output.
 */
#include "fuzz.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#define SECONDS 60 /* for one input, under the sanitizers and beside other tests */
#define MOST_EDITS 6

/* What may break a reader where a random byte would not. */
static const char * const tokens[] = {
  "null", "true", "-1", "0", "1e308", "1e-308", "9223372036854775807", "4294967296", "\"\"", "{}",
  "[]", "\\u0000", "\\ud800", ",", ":", "\"", "<", "/>", "&#0;", "url(#a)", "<use href=\"#a\"/>",
  "<g>", "NaN", "\xff\xd9", "\xff\xda", "IEND", "\xef\xbb\xbf", "data:image/png;base64,",
};

static void
insert (GByteArray *bytes,
        guint       at,
        const void *what,
        guint       length)
{
  g_autoptr (GByteArray) tail = g_byte_array_new ();

  g_byte_array_append (tail, bytes->data + at, bytes->len - at);
  g_byte_array_set_size (bytes, at);
  g_byte_array_append (bytes, what, length);
  g_byte_array_append (bytes, tail->data, tail->len);
}

static void
edit (GByteArray *bytes,
      GRand      *dice)
{
  guint at = bytes->len > 0 ? (guint) g_rand_int_range (dice, 0, (gint32) bytes->len) : 0;
  guint most = 1U << g_rand_int_range (dice, 0, 9);
  guint length = MIN (bytes->len - at, most);
  const char *token = tokens[g_rand_int_range (dice, 0, G_N_ELEMENTS (tokens))];

  switch (g_rand_int_range (dice, 0, bytes->len > 0 ? 6 : 1))
    {
    case 0:
      insert (bytes, at, token, (guint) strlen (token));
      break;
    case 1:
      bytes->data[at] = (guint8) g_rand_int_range (dice, 0, 256);
      break;
    case 2:
      bytes->data[at] ^= (guint8) (1U << g_rand_int_range (dice, 0, 8));
      break;
    case 3:
      g_byte_array_remove_range (bytes, at, length);
      break;
    case 4: /* what stands there once more */
      {
        g_autofree guint8 *copy = g_memdup2 (bytes->data + at, length);

        insert (bytes, (guint) g_rand_int_range (dice, 0, (gint32) bytes->len + 1), copy, length);
        break;
      }
    default:
      g_byte_array_set_size (bytes, at);
      break;
    }
}

/* Of number 0 the file itself. (transfer full) */
static GByteArray *
make_input (const char *path,
            guint       number)
{
  GByteArray *bytes = g_byte_array_new ();
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *text = NULL;
  gsize length;
  GRand *dice = g_rand_new_with_seed (g_str_hash (name) * 31 + number);

  if (!g_file_get_contents (path, &text, &length, NULL))
    exit (2);
  g_byte_array_append (bytes, (guint8 *) text, (guint) length);
  for (int n = number > 0 ? g_rand_int_range (dice, 1, MOST_EDITS) : 0; n > 0; n--)
    edit (bytes, dice);
  g_rand_free (dice);
  return bytes;
}

static void
try_input (const char *path,
           guint       number)
{
  g_autoptr (GByteArray) bytes = make_input (path, number);
  /* as long as its bytes, so that reading past them is seen */
  g_autofree guint8 *exact = g_memdup2 (bytes->data, bytes->len);

  alarm (SECONDS);
  LLVMFuzzerTestOneInput (exact, bytes->len);
  alarm (0);
}

/* TRUE if the child came through all; `at` says how far. */
static gboolean
try_in_child (const char *path,
              guint       n,
              guint      *at)
{
  int status = 0;
  pid_t child;

  fflush (stdout);
  child = fork ();
  if (child == 0)
    {
      for (*at = 0; *at <= n; ++*at)
        try_input (path, *at);
      exit (0);
    }
  return waitpid (child, &status, 0) == child && WIFEXITED (status) && WEXITSTATUS (status) == 0;
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char * const *) a, *(char * const *) b);
}

/* (transfer full) */
static GPtrArray *
list (const char *folder)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (paths, compare_names);
  return paths;
}

static int
replay (const char *folder,
        guint       n)
{
  g_autoptr (GPtrArray) paths = list (folder);
  guint *at = mmap (NULL, sizeof *at, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  guint failed = 0;

  printf ("1..%u\n", paths->len + 1);
  printf ("%s 1 - there is a corpus\n", paths->len > 0 ? "ok" : "not ok");
  for (guint i = 0; i < paths->len; i++)
    {
      const char *path = g_ptr_array_index (paths, i);
      g_autofree char *name = g_path_get_basename (path);
      gboolean good = try_in_child (path, n, at);

      printf ("%s %u - %s and %u changes of it\n", good ? "ok" : "not ok", i + 2, name, n);
      if (!good)
        printf ("# ended badly at change %u\n", *at);
      failed += !good;
    }
  return failed > 0 || paths->len == 0;
}

int
main (int    argc,
      char **argv)
{
  guint number = argc > 2 ? (guint) atoi (argv[2]) : 0;

  if (argc < 2)
    return 2;
  if (g_file_test (argv[1], G_FILE_TEST_IS_DIR))
    return replay (argv[1], number);
  if (argc > 2)
    {
      g_autoptr (GByteArray) bytes = make_input (argv[1], number);

      return fwrite (bytes->data, 1, bytes->len, stdout) != bytes->len;
    }
  try_input (argv[1], 0);
  return 0;
}
