/** What `holdfast --help` prints. */
export const help = `holdfast plans the alignment of a train of machines.

  holdfast plan FILE [--json]    the least move that meets every tolerance
  holdfast plan FILES | FOLDER   the same of many train files, one line of JSON
                                 each, in their order
  holdfast plan --lines [FILE]   the same of many trains, one a line
  holdfast holds FILE [--json]   every choice of machines to hold, ranked
  holdfast check FILE [--json]   what stands in the file; nothing is solved
  holdfast hotcheck FILE [-o OUT]   the train as it ran against the plan, and
                                 whether a trim pays; OUT: the train file with
                                 its growth corrected
  holdfast since LEFT FOUND [--json]   what walked between two readings of a
                                 train: as left then, as found now; two files
                                 more for each other time; or one file in which
                                 its outages are kept
  holdfast site FILES | FOLDER [--json]   every train: when it was last aligned,
                                 how it stands in tolerance, what is due and why
  holdfast model FILE -o OUT     the program behind the plan, for any solver:
                                 OUT ends in .lp (CPLEX LP) or .mps (free MPS)
  holdfast sheet FILE -o OUT     the work sheet for print: OUT ends in .html, or
                                 in .pdf where a browser of the Chromium family
                                 is installed (or named in CHROMIUM)

FILE is a train file; - reads it from standard input.

  --json     answer for programs, on standard output and nothing else there
  --sure     of a plan or its choices: the chance that every state is in
  --work N   of a plan or its choices: how many times the usual work a
             question may take before it is told to be unfinished [1]
  --jobs N   of many files: how many side by side [the processors]
  --known OUT   of many files: the lines of an earlier run; what stands there of
             files that have not changed is told again without planning
  --for crew | office | shift   of a sheet [crew]: every foot, checks, steps,
             readings and what is left, to do the job by; choices, sums,
             assumptions and data, to release it by and keep; what is done, next
             and not to be touched, to hand it over half done
  --paper a4 | letter, --date TEXT   of a sheet [a4, today]
  --date DAY   of a site: the day to judge by [today]
  --help     this text
  --version  the version

Exit status: 0 answered, also when nothing needs to move; 1 no plan is possible
(the answer is printed all the same); 2 the file or the arguments were refused;
3 the planner stopped, or its plan did not pass the proof: no plan is shown; or
there is no browser to make a PDF with; or the answer could not be written.

Of many trains: 0 each was answered (that one cannot be aligned is an answer);
2 some were refused; 3 some stopped. No bad train stops the others.

Planning aid. Isolate, lock, try to start. Site procedure comes first; the
responsible engineer decides and signs.
`
