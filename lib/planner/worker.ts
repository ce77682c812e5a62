/// <reference lib="webworker" />
// The program of the page's planning worker. The build bundles it into a file of its own.
import { answerTasks } from './tasks';

declare const self: DedicatedWorkerGlobalScope;

answerTasks(self);
